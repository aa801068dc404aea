title = Continue where you were
no-visit = without a visit
where =
    { $answers ->
        [one] { $where } · 1 item answered
       *[other] { $where } · { $answers } items answered
    }
