open =
    { $questions ->
        [0] nothing open
        [one] 1 question open
       *[other] { $questions } questions open
    }
questions = { $open }: { $questions }
alike = place, side and kind as another: give it a zone name
no-opening = There is no opening yet
same-id = Two openings bear the id { $id }
