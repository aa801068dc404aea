title-series = Readings of the loop, one resistor in series
title-double = Readings of the loop, one resistor in series and one across the contact
title-double-across = Readings of the loop, one resistor in series with the contact and one across both
state = State
meter = Meter on the disconnected pair
input = Input reads, with all tolerances

# States, in a line and at its beginning.
state-shut = door closed
    .first = Door closed
state-open = door open
    .first = Door open
state-short = pair shorted
    .first = Pair shorted
state-cut = pair cut
    .first = Pair cut

at-most = at most { $resistance }
open-circuit = open circuit

alike = { $states } read the same, and no input can tell them apart.
all-differ = All four states read differently.
four-apart = The four states stand at least { $gap } apart.
others-apart = The other states stand at least { $gap } apart.

supply =
    Supply { $supply } over a pull-up as large as the end-of-line resistor. The panel's instructions state
    both.
smallest =
    Worked for { $resistance }, the smallest that the label may name: with a larger one and an equal pull-up the
    voltages are the same but for the cable.
cable = Cable of { $length }, both conductors { $resistance }.
equal = Both resistors have the same value.
