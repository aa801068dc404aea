rule = A command with a hazard of its own has its caution at that step or earlier.

no-caution =
    .found = a step that begins with { $verb }, with no caution before it
    .expected = one of the cautions { $cautions } here, on an earlier step or for the whole
    .action = Add the caution's id under cautions of this step or under safety.
