rule = Ids of steps, items, causes and the like are each used once; an alias is nobody else's id.

taken =
    .found = the id "{ $id }", taken by { $file }
    .expected = an id used once
    .action = Choose another id.

used-above =
    .found = the id "{ $id }", used above in this record
    .expected = an id used once
    .action = Choose another id.
