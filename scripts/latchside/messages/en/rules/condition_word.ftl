rule = A condition names words that a survey can hold for its field.

field-of-figures =
    .found = words for { $field }, which holds a figure
    .expected = below or above
    .action = Give it a limit, or ask about a field that holds a word.

unknown-word =
    .found = "{ $word }" for { $field }
    .expected = { $known }.{ $hint }
    .action = Correct the word. What is not known is asked, and is no condition.
