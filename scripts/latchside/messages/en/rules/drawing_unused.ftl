rule = Every drawing is shown: a record or a page names it, or it is that of a kind of opening.

unused =
    .found = the drawing { $drawing }, which nothing shows
    .expected = a device, a step or a page that names it, or the name opening- and a kind of opening
    .action = Name it where it is shown, or delete the file.
