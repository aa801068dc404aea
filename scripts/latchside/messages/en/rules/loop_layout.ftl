rule = A reading of a loop is said with the layout of resistors that it is for.

no-layout =
    .found = { $value } without its layout
    .expected = the number of resistors and where they lie
    .action = Say the layout, or say the closed or open value of its layout.
