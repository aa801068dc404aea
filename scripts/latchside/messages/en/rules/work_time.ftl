rule = Every procedure that a job is planned with has its minutes, at best, as a rule and at worst.

no-row =
    .found = procedure/{ $procedure }, which has no row in { $file }
    .expected = a row with its minutes, low, usual and high
    .action = Add the row { $procedure } to { $file }.

not-in-order =
    .found = { $figures } as low, usual and high
    .expected = three figures that do not fall
    .action = Correct the minutes of the row.
