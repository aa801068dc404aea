loop-title = What a loop reads in each state
reading = reading of the input, V
layout-series = One resistor, in series
layout-double = Two: in series and across the contact

# States, in a line and at its beginning.
state-short = short
    .first = Short
state-shut = closed
    .first = Closed
state-open = open
    .first = Open
state-cut = cut
    .first = Cut
state-tamper = tamper
    .first = Tamper

alike = { $states } read the same.
circuit =
    Behind a resistor of { $pull_up } to { $supply }, with { $end } at the far end and a tolerance of { $tolerance }.
reads = { $layout }: closed reads { $shut }, open { $open }.
gap = The smallest gap between states that can be told apart is { $gap }.

bands-title = Bands of resistors often met
bands =
    Each resistor is read from the end where the bands lie close: first digit, second digit, power of ten, tolerance.
    { $read }. A meter settles what a faded band does not.
band-first = first
band-second = second
band-power = power
band-tolerance = tolerance
