rule = An expression of a figure holds numbers, declared names, arithmetic and known functions.

refused =
    .found = { $found }
    .expected = { $expected }
    .action = Write it with what is allowed; the schema lists it.
