rule = A check that needs protection off says how it is put back.

no-restore =
    .found = “{ $need }” and no restore
    .expected = restore: how protection is put back
    .action = Add restore, or correct what the check needs.
