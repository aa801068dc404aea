record-in-a-subfolder =
    .found = a record in a folder of its own
    .expected = every record in { $folder } itself
    .action = Move the file up to { $folder }.

drawing-in-a-subfolder =
    .found = a drawing in a folder of its own
    .expected = every drawing in { $folder } itself
    .action = Move the file up to { $folder }.

symlink =
    .found = a link to another place
    .expected = a plain file
    .action = Copy the file here instead.

file-ending =
    .found = { $name }
    .expected = a name that ends in { $ending }
    .action = Rename the file.

not-a-file =
    .found = something that is not a file
    .expected = a plain file
    .action = Remove or rename it.

record-too-large =
    .found = { $size } bytes
    .expected = at most { $most } bytes
    .action = Split it into several records.

drawing-too-large =
    .found = { $size } bytes
    .expected = at most { $most } bytes
    .action = Draw it with fewer points.

cannot-read =
    .found = { $why }
    .expected = a file that may be read
    .action = Fix the file's permissions.

not-utf-8 =
    .found = byte { $byte }
    .expected = text in UTF-8
    .action = Save the file as UTF-8.

# Where the system gives no reason.
unreadable = no way to read it
