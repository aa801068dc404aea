rule = A fault is small enough for its plan to be worked out exactly on a phone.

too-large =
    .found = { $causes } causes and { $checks } checks, a plan of size { $size }
    .expected = { $most } at most, as 9 causes and 9 checks that never mislead are
    .action = Split the fault, or join causes that have the same repair.
