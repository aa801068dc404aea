rule = A device that sits in a hole is ruled out where no hole may be made.

not-ruled-out =
    .found = a hole, and nothing that rules it out where { $field } is { $answer }
    .expected = a sentence with rules_out: true and that field under when
    .action = Add it: a hole in a fire or escape door cannot be taken back.
