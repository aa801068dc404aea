all-openings = All openings
numbered = { $number }. { $opening }
count =
    { $questions ->
        [0] Opening { $number } of { $openings }, nothing open.
        [one] Opening { $number } of { $openings }, 1 question open.
       *[other] Opening { $number } of { $openings }, { $questions } questions open.
    }
copy = Copy this opening
take-away = Remove this opening
next = Next opening
