rule = Some result of each check leaves a cause or leads to another fault.

leaves-none =
    .found = the check { $check }, which leaves no cause whatever it shows
    .expected = a result with leaves or go
    .action = Say which causes each result leaves, or drop the check.
