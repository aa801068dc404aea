rule = Work inside a panel has the caution for mains before it, and is done with the power off.

no-caution =
    .found = work inside a panel, with no caution for mains before it
    .expected = the caution { $caution } here, on an earlier step or for the whole
    .action = Add { $caution } under cautions.

power-on =
    .found = work inside a panel, with no word that its power is off
    .expected = { $where ->
        [check] { $need } among what the check needs, or a procedure to follow that powers down
       *[text] the power-down named here or before it, or a procedure to follow that powers down
    }
    .action = { $where ->
        [check] Add { $need } under needs, and link the power-down in the command.
       *[text] Name the power-down, with a link to its first step.
    }
