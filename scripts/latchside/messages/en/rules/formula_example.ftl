rule = A worked example of a figure comes out as it says.

no-such-output =
    .found = { $output }, which is no output
    .expected = one of: { $outputs }.{ $hint }
    .action = Correct the name.

inputs-refused =
    .found = { $why }
    .expected = inputs that the figure accepts
    .action = Correct the example.

comes-out-otherwise =
    .found = { $output } comes out as { $found }
    .expected = { $expected } within { $share } of it
    .action = Correct the example or the expression.
