open =
    { $questions ->
        [0] all answered
        [one] 1 not answered
       *[other] { $questions } not answered
    }
questions = { $open }: { $questions }
alike = place, side and kind as another: give it a zone name
no-opening = There is no opening yet
same-id = Two openings bear the id { $id }
