rule = What a remedy waits for is a cause of the same fault that is repaired on the visit, and never itself.

no-such-cause =
    .found = { $cause }, which is no cause of this fault
    .expected = a cause of this fault.{ $hint }
    .action = Correct the id, or add the cause.

for-an-electrician =
    .found = { $cause }, which only a licensed electrician repairs
    .expected = a cause that is repaired on the visit
    .action = Drop it here: what is an electrician's work is passed on.

circle =
    .found = a circle, in which each waits for the next: { $causes }
    .expected = one that can be repaired first
    .action = Take one of them out.

too-many =
    .found = { $count } causes that hang together by after
    .expected = { $most } at most
    .action = Leave out what is not needed, or split the fault.
