title-loop-none = Loop with no end-of-line resistor
    .about =
        The panel's input has a pull-up resistor to its supply. A cable pair runs to a closed-circuit contact, drawn
        with the door closed. Meter on the disconnected pair: door closed and a short both read near zero, door open and
        a cut both read open circuit.
title-loop-series = Loop with one resistor in series
    .about =
        One end-of-line resistor sits at the contact, in series with it. Meter on the disconnected pair: door closed
        reads the resistor, a short reads near zero, door open and a cut both read open circuit: open and cut read the
        same.
title-loop-parallel = Loop with one resistor across the contact
    .about =
        One end-of-line resistor sits at the contact, across it. Meter on the disconnected pair, with a closed-circuit
        contact: a cut reads open circuit, door open reads the resistor, door closed and a short both read near
        zero. With an open-circuit contact: a cut reads open circuit, door closed reads the resistor, door open and
        a short both read near zero.
title-loop-double = Two resistors: one in series, one across the contact
    .about =
        Two resistors sit at the contact: A in series with it, B across it. Meter on the disconnected pair: a cut reads
        open circuit, door open reads A plus B, door closed reads A alone, a short reads near zero. All four read
        differently.
title-loop-double-across = Two resistors: one in series with the contact, one across both
    .about =
        Two resistors sit at the contact: A in series with it, B across A and contact together. Meter on the
        disconnected pair: a cut reads open circuit, door open reads B alone, door closed reads A and B in parallel, a
        short reads near zero. All four read differently.

control-unit = panel
supply = supply
pull-up = pull-up
input = input
common = common
cable-pair = cable pair
at-contact = at the contact
drawn-shut = drawn closed
contact = contact
resistor = resistor
resistors = A, B: resistors
meter = Meter on the disconnected pair

state-shut = door closed
state-open = door open
state-short = short
state-cut = cut

reading-open-circuit = open circuit
reading-near-zero = near zero
reading-resistor = the resistor
reading-sum = A + B
reading-a = A alone
reading-b = B alone
reading-parallel = A, B parallel

closed-while-shut = Closed-circuit contact
open-while-shut = Open-circuit contact
shut-short-alike = Closed and short read the same.
open-cut-alike = Open and cut read the same.
open-short-alike = Open and short read the same.
all-differ = All four read differently.
