rule = Every procedure, checklist, fault, caution, tool, table and source is used by another record.

not-used =
    .found = { $record }, which nothing refers to
    .expected = a reference from a { $users }
    .action = Refer to it as { $record }, or delete it.
