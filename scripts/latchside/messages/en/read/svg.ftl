not-well-formed =
    .found = { $why }
    .expected = well-formed XML
    .action = Save the drawing again as plain SVG.

entity =
    .found = a DOCTYPE or an entity
    .expected = plain SVG
    .action = Save the drawing again as plain SVG; delete <!DOCTYPE …> and <!ENTITY …>.

too-deep =
    .found = more than { $most } groups in each other
    .expected = a drawing like the others
    .action = Ungroup what you can.

no-element =
    .found = no element
    .expected = <svg xmlns="{ $namespace }">
    .action = Save it as plain SVG.

other-element =
    .found = <{ $element }>
    .expected = <svg xmlns="{ $namespace }">
    .action = Save it as plain SVG.
