rule = A pause point puts critical items first and says each item in at most twelve words.

none-critical =
    .found = no critical item
    .expected = at least one item with critical: true
    .action = Mark the item that must not be missed.

critical-later =
    .found = a critical item after an ordinary one
    .expected = critical items first
    .action = Move it up.

too-long =
    .found = an item of { $count } words
    .expected = at most { $most }
    .action = Shorten it; the step explains the rest.
