title-loop-none = Loop with no end-of-line resistor
    .about =
        The control unit's input has a pull-up resistor to its supply. A cable pair runs to a contact that is closed
        while the leaf is shut. Meter on the disconnected pair: leaf shut and a short both read near zero, leaf open and
        a cut both read open circuit.
title-loop-series = Loop with one resistor in series
    .about =
        One end-of-line resistor sits at the contact, in series with it. Meter on the disconnected pair: leaf shut reads
        the resistor, a short reads near zero, leaf open and a cut both read open circuit: open and cut read the same.
title-loop-parallel = Loop with one resistor across the contact
    .about =
        One end-of-line resistor sits at the contact, across it. Meter on the disconnected pair, contact closed while
        the leaf is shut: a cut reads open circuit, leaf open reads the resistor, leaf shut and a short both read near
        zero. Contact open while the leaf is shut: a cut reads open circuit, leaf shut reads the resistor, leaf open and
        a short both read near zero.
title-loop-double = Two resistors: one in series, one across the contact
    .about =
        Two resistors sit at the contact: A in series with it, B across it. Meter on the disconnected pair: a cut reads
        open circuit, leaf open reads A plus B, leaf shut reads A alone, a short reads near zero. All four read
        differently.
title-loop-double-across = Two resistors: one in series with the contact, one across both
    .about =
        Two resistors sit at the contact: A in series with it, B across A and contact together. Meter on the
        disconnected pair: a cut reads open circuit, leaf open reads B alone, leaf shut reads A and B in parallel, a
        short reads near zero. All four read differently.

control-unit = control unit
supply = supply
pull-up = pull-up
input = input
common = common
cable-pair = cable pair
at-contact = at the contact
drawn-shut = drawn leaf shut
contact = contact
resistor = resistor
resistors = A, B: resistors
meter = Meter on the disconnected pair

state-shut = leaf shut
state-open = leaf open
state-short = short
state-cut = cut

reading-open-circuit = open circuit
reading-near-zero = near zero
reading-resistor = the resistor
reading-sum = A + B
reading-a = A alone
reading-b = B alone
reading-parallel = A, B parallel

closed-while-shut = Contact closed while the leaf is shut
open-while-shut = Contact open while the leaf is shut
shut-short-alike = Shut and short read the same.
open-cut-alike = Open and cut read the same.
open-short-alike = Open and short read the same.
all-differ = All four read differently.
