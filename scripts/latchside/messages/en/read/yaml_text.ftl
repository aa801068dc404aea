empty-file =
    .found = an empty file
    .expected = a record
    .action = Write the record or delete the file.

second-document =
    .found = a second document (---)
    .expected = one record a file
    .action = Move it to a file of its own.

too-deep =
    .found = more than { $most } levels
    .expected = a record like the others
    .action = Flatten it; the schema shows the shape.

anchor-or-alias =
    .found = { $name }
    .expected = plain values without & and *
    .action = Write the value out, or quote the text if the sign belongs to it.

yaml-tag =
    .found = { $tag }
    .expected = plain values without ! tags
    .action = Remove the tag, or quote the text.

key-not-text =
    .found = a list or mapping as a key
    .expected = a word as a key
    .action = Quote text that starts with [ or { "{" }.

duplicate-key =
    .found = { $key } a second time
    .expected = each key once (first on line { $line })
    .action = Merge the two, or rename one.

bad-character =
    .found = a character that YAML does not allow
    .expected = printable text
    .action = Delete the character.

tab-indent =
    .found = a tab in the indentation
    .expected = spaces
    .action = Replace the tab by two spaces.

broken-yaml =
    .found = { $problem }: { $line }
    .expected = valid YAML
    .action = Look at this line and the one above: indentation, a missing quote, or a colon in unquoted text.

# Where the parser itself names no problem.
not-yaml = not YAML
