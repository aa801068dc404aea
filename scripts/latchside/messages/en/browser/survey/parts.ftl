none = None
add = Add one
open = open
numbered = { $field }, { $number }
take-out = Take out number { $number }
answers =
    { $answers ->
        [0] nothing that has to be told
        [one] 1 answer
       *[other] { $answers } answers
    }
questions = Questions
more = More to tell
