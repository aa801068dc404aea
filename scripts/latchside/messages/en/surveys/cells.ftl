no-number = { $found },
no-whole-number = { $text }, no whole number,
unknown-word = { $words }.{ $hint }
unknown-material = a material and its thickness, such as brick 100 mm. Materials: { $words }.{ $hint }

# What to do.
correct-number = Correct the number.
listed-word = Use a listed word.
word-or-blank = Use the word, or leave it blank.
separate-walls = Separate walls by semicolons; write none for none.

# What a cell is expected to hold.
number =
    { $whole ->
        [yes] a whole number
       *[no] a number
    }
number-in =
    { $whole ->
        [yes] a whole number in { $unit }
       *[no] a number in { $unit }
    }
number-or = { $number }, or { $word }
length = a length such as 4 mm or 3/16 in, as text
day = a day, as 2026-03-09
yes = yes, or a blank cell
names = names, separated by semicolons
walls = walls such as brick 100 mm, separated by semicolons
text = text
