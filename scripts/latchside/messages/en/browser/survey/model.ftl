none = none
opening-at = { $place }: { $kind }
opening = Opening { $number }
no-opening = There is no opening yet
same-id = Two openings bear the id { $id }
open =
    { $questions ->
        [0] nothing open
        [one] 1 question open
       *[other] { $questions } questions open
    }
