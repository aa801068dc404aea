rule = A step is one command: a known verb first, one sentence, at most twenty words.

no-verb =
    .found = a command that starts with "{ $word }"
    .expected = a verb of the list step-verb (a condition first, with a comma).{ $hint }
    .action = Start with the verb, or add it to schema/vocabulary.schema.json.

too-long =
    .found = a command of { $count } words
    .expected = at most { $most }
    .action = Shorten or split it.

several =
    .found = more than one command
    .expected = one command a step
    .action = Split it into steps.
