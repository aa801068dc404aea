# What was ticked without a visit.
offered =
    { $entries ->
        [one] 1 item of this list was answered without a visit, at { $at }.
       *[other] { $entries } items of this list were answered without a visit, the last at { $at }.
    }
take = Take them into { $visit }
leave = Leave them
taken =
    { $entries ->
        [one] 1 answer is in this visit now.
       *[other] { $entries } answers are in this visit now.
    }
