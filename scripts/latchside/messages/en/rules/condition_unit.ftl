rule = A limit of a condition is in a unit that fits its field, or a value that the device states.

room-limit =
    .found = a limit for { $field } other than the most of a value of the device
    .expected = below, with of: a travel of the magnet, and limit: most
    .action = Write below: { "{" }of: break-travel, limit: most{ "}" }.

limit-of-a-word =
    .found = a limit for { $field }, which holds a word
    .expected = { $figures }
    .action = Name its words under is, or ask about a field that holds a figure.

wrong-unit =
    .found = { $unit } as the unit of a limit
    .expected = a unit of { $dimension }: { $fitting }
    .action = Correct the unit.

beside-a-figure =
    .found = { $key } beside a figure of its own
    .expected = it only beside of
    .action = Write the figure as it is meant, or name a value of the device under of.

value-not-stated =
    .found = { $value }, which { $device } does not state
    .expected = { $values }
    .action = State it under values, or name another one.

value-of-another-unit =
    .found = { $value } in { $unit }
    .expected = a value with a unit of { $dimension }
    .action = Name another value.
