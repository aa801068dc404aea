rule = Every kind of opening that a device is for has its drawing.

not-drawn =
    .found = { $kind }, which is not drawn
    .expected = { $file }
    .action = Draw where magnet and sensor go on it.
