rule = A device lists what its traits ask for, and nothing that does not fit them.

not-listed =
    .found = { $field } without { $record }, which its traits ask for
    .expected = { $record } under { $field }
    .action = Add it. { $file } says whom it is needed by.

not-for-it =
    .found = { $record }, which is not for a device of its traits
    .expected = what { $file } says under only
    .action = Take it out, or correct the traits.
