rule = Work inside a panel has the caution for mains before it.

no-caution =
    .found = work inside a panel, with no caution for mains before it
    .expected = the caution { $caution } here, on an earlier step or for the whole
    .action = Add { $caution } under cautions.
