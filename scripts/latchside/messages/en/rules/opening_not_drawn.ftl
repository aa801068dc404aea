rule = Every kind of opening that a device is for has its drawing.

not-drawn =
    .found = { $kind }, which is not drawn
    .expected = { $file }
    .action = Draw where magnet and sensor go on it.

form-not-drawn =
    .found = { $kind }, which no drawing shows with a contact that mounts { $form }
    .expected = groups for it, data-for="{ $form }", in { $file }
    .action = Draw where magnet and sensor go when they are fixed so.
