rule = A text asks a device only for values that its profile states.

not-stated =
    .found =
        { $count ->
            [one] the value { $value }, asked of { $devices }, which does not state it
           *[other] the value { $value }, asked of { $devices }, which do not state it
        }
    .expected = a value that each of them states
    .action = Say with only whom it is for, or state the value there.
