rule = Every result of a check leaves causes, another fault or the escalation, and every cause is reached.

tells-nothing =
    .found = a check whose results all leave the same causes
    .expected = results that tell causes apart
    .action = Correct what each result leaves, or drop the check.

cause-not-reached =
    .found = the cause { $cause }, which no check leads to
    .expected = a result that leaves it
    .action = Add it under leaves of a result, or add a check.

no-such-cause =
    .found = { $cause }, which is no cause of this fault
    .expected = one of: { $causes }
    .action = Correct the id, or add the cause.
