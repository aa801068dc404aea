columns = Columns
no-listed-word = Not a listed word
choose = Choose a word of the list, or leave the cell blank.
