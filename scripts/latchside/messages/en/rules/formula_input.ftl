rule = What a figure takes fits together: defaults in range, inputs and models that exist.

no-such-model =
    .found = the model { $model }, which does not exist
    .expected = one of: { $models }.
    .action = Correct the name, or write the module.

limits-crossed =
    .found = min { $least } above max { $most }
    .expected = min at most max
    .action = Swap or correct them.

several-sorts =
    .found = { $sorts }
    .expected = one of them
    .action = Keep one.

no-other-input =
    .found = { $input }, which is no other input
    .expected = the name of another input.{ $hint }
    .action = Correct the name.

default-refused =
    .found = { $why }
    .expected = a default it accepts itself
    .action = Correct it.

no-such-choice =
    .found = { $input }: { $word }
    .expected = another input with choices, and one of its words
    .action = Correct the name or the word.

more-needed =
    .found = { $input } is out of view and has no default
    .expected = more only with a default, or where the input is optional
    .action = Give it a default, or take more away.
