rule = No term links by a word that is a verb of steps.

verb =
    .found = "{ $phrase }", a verb of steps, as words that link
    .expected = words that mean nothing else
    .action = List under `links_as` the phrases in which it is this term, or [] for none.
