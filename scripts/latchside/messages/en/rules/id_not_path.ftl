rule = A record's id is its file name without .yaml.

other-id =
    .found = "{ $id }" in { $file }
    .expected = "{ $name }", as the file is named
    .action = Rename the file or correct the id; after a rename add the old id under aliases.
