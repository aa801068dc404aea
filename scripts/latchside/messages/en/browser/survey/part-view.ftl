answers =
    { $answers ->
        [0] nothing that has to be told
        [one] 1 answer
       *[other] { $answers } answers
    }
open =
    { $questions ->
        [0] nothing open
        [one] 1 question open
       *[other] { $questions } questions open
    }
