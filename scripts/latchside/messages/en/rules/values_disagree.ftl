rule = The values of a device do not contradict each other.

disagree =
    .found = { $more } down to { $least }, { $less } up to { $most }
    .expected = { $more } more than { $less }: { $why }
    .action = Correct the one that is wrong.

disagree-times =
    .found = { $more } down to { $least }, { $less } up to { $most }
    .expected = { $more } at least { $times } times { $less }: { $why }
    .action = Correct the one that is wrong.

# Why the first value is the larger one.
why-release-reach = a closed reed lets go farther away than it closes
why-operate-field-release-field = a closed reed holds at less field than closes it
why-reach-fit-gap = sag, season and play take a part of the make distance
why-reach-reach-on-steel = steel shortens the make distance
why-loop-open-loop-shut = an open loop is told from a closed one
why-loop-shut-loop-short = a short is told from the resistor
why-end-of-line-contact-resistance = the leads are small beside the resistor
why-cell-voltage-cell-low = a battery is reported low below its voltage
why-missed-window-check-in = one lost check-in is no trouble
