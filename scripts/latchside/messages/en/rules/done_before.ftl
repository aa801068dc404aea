rule = A procedure that another one says is done before it comes first in the list of every device.

comes-later =
    .found = { $procedure } before { $earlier }
    .expected = { $earlier } first: { $procedure } says under before that it is done
    .action = Change their order, or what the procedure says of it.
