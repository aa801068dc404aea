rule = A drawing can be read on a phone: large text in ink, and colours and lines of the one set.

dark-ground =
    .found = { $words } on a dark ground, { $ground }
    .expected = ink on a light one
    .action = Put it beside the part, with a line that leads to it.

no-size =
    .found = { $words } with no size as a plain number
    .expected = font-size, { $least } or more
    .action = Write the size in units of the view box.

too-small =
    .found = { $words } in size { $size }: { $on_phone } px on a phone
    .expected = { $least } or more: size × { $column } / { $width } is at least { $pixels } px
    .action = Make the text larger.

not-ink =
    .found = { $words } in { $colour }
    .expected = fill="{ $ink }", as all text
    .action = Give it the colour of ink.

no-colour =
    .found = { $words } in a colour that is not stated
    .expected = fill="{ $ink }", as all text
    .action = Give it the colour of ink.

other-colour =
    .found = { $way } { $colour } on <{ $element }>
    .expected = one of { $colours }, or none
    .action = Take the nearest of them: they are told apart in the sun and in print.

no-fill =
    .found = no fill on <{ $element }>, which makes it black
    .expected = one of { $colours }, or none
    .action = Take the nearest of them: they are told apart in the sun and in print.

other-weight =
    .found = a line of { $weight } on <{ $element }>
    .expected = stroke-width { $thin } for leaders and dimensions, { $line } for outlines, { $bar } for cables and levers
    .action = Take the one that says what the line is.
