rule = A result states a value or a state, never only OK, checked or set.

empty =
    .found = "{ $text }" as { $field }
    .expected = a value or a state, such as: the zone shows closed
    .action = Say what is seen.
