rule = Ids of the openings of a job are each used once.

used =
    .found = the id "{ $id }", used on line { $line }
    .expected = ids that differ
    .action = Give the opening an id of its own.
