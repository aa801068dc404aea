# A range of numbers, where it stands within a sentence.
at-least = at least { $low }
more-than = more than { $low }
at-most = at most { $high }
less-than = less than { $high }

no-digits = That is no number. Type digits alone.
no-number = That is no number. Type it as 2.5 or 2,5.
type-whole = Type a whole number.
out-of-range = Out of range. Type a number of { $range }.
no-length =
    { $units ->
        [in-ft] That is no length. Type it as 4.5 or 4,5, or inches as 3/16 in, or feet and inches as 12 ft 6 in.
        [in] That is no length. Type it as 4.5 or 4,5, or inches as 3/16 in.
        [ft] That is no length. Type it as 4.5 or 4,5, or feet and inches as 12 ft 6 in.
       *[none] That is no length. Type it as 4.5 or 4,5.
    }
too-far = More than { $far }. Look at the figure, and at its unit.
negative = A length is not less than nothing. Take the minus off.
too-long = Too long by { $over }. Shorten it.
no-day = That is no day from 2000 to 2099. Choose one.
no-id = Use small letters and digits, words joined by hyphens, a letter first.
too-short = Type at least { $letters } letters.
unread-length = “{ $typed }” cannot be read as a length with its unit.
answer-anew = The answer that is kept { $fault }. Answer anew.

# What is wrong with a value; it stands behind the name of its field.
not-fixed = may not be anything else than { $value }
none-of = is none of: { $words }
is-no-number = is no number
is-not-whole = is no whole number
is-not = is not { $range }
is-no-length = is no length
is-no-text = is no text
letters = has { $size } letters and may have { $low } to { $high }
pattern = is not written as it has to be
in-field = { $field } { $fault }
no-list = { $field } is no list
entries = { $field } has { $size } entries and may have { $low } to { $high }
any-number = any number
twice = { $field } names one thing twice
no-group = { $field } is no group of fields
file-no-group = The file is no group of fields
within = { $group }, { $field }
numbered = { $field } { $number }
missing = { $field } is missing
