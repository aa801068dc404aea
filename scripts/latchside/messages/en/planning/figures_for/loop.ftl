# The loop at the terminals of a transmitter.
at-terminals = Loop at the terminals
label =
    The label of the transmitter names one of these, or a plain loop. Contact and cable without the resistor read
    { $resistance }.

# What a meter reads.
reading = Loop reading
states = closed { $shut }; open { $open }
states-assumed = with what is assumed: closed { $shut }; open { $open }
metered =
    { $layout ->
        [none]
            No resistor, metered with the pair off its terminals. A cut reads as an open door, and a short as a closed
            one.
        [series] One resistor in series, metered with the pair off its terminals. A cut reads as an open door.
        [parallel]
            One resistor across the contact, metered with the pair off its terminals. A cut reads open circuit, and a
            short as a closed door.
        [double]
            Two resistors, one in series and one across the contact, metered with the pair off its terminals. A cut
            reads open circuit.
       *[double-across]
            Two resistors, one in series with the contact and one across both, metered with the pair off its terminals.
            A cut reads open circuit.
    } A short reads { $short }.
shared =
    Where both contacts share this loop, one resistor lies across both, and a cut between them reads as an open door.

# What is assumed.
layout-assumed = The layout is not known and counts as one resistor in series.
end-assumed = The resistor is not known and counts as { $ohm }.
second-assumed = The second resistor is not known and counts as the same value.

# What the input reads, state by state.
input = Input voltage
voltages = door closed { $shut }; door open { $open }; pair shorted { $short }; pair cut { $cut }
alike =
    { $states ->
        [shut-open] Door closed and door open read alike.
        [shut-short] Door closed and pair shorted read alike.
        [shut-cut] Door closed and pair cut read alike.
        [open-short] Door open and pair shorted read alike.
        [open-cut] Door open and pair cut read alike.
        [short-cut] Pair shorted and pair cut read alike.
        [shut-open-short] Door closed, door open and pair shorted read alike.
        [shut-open-cut] Door closed, door open and pair cut read alike.
        [shut-short-cut] Door closed, pair shorted and pair cut read alike.
        [open-short-cut] Door open, pair shorted and pair cut read alike.
       *[shut-open-short-cut] Door closed, door open, pair shorted and pair cut read alike.
    }
apart = All four stand at least { $gap } apart.
others-apart = The others stand at least { $gap } apart.
windows = The panel has its own windows, in its instructions; those win.

# Readings to expect.
expected-shut = Loop, door closed, { layout }
expected-open = Loop, door open, { layout }
expected-short = Loop, pair shorted on the panel side of its resistors, { layout }
expected-cut = Loop, one core lifted at the first contact
cut-shows = { $open }; the panel shows tamper or trouble
expected-label = Loop, door closed, resistor of the label
of-label = the label's value ±{ $percent }, +{ $leads }: write it down
expected-terminals = Loop, door open
expected-shorted = Loop, pair shorted on the panel side of its resistor
input-shut = Voltage at the input, door closed
input-open = Voltage at the input, door open
about = about { $volts }; the panel's window decides
layout =
    { $layout ->
        [none] no resistor
        [series] one resistor in series
        [parallel] one resistor across the contact
        [double] two resistors, one in series and one across the contact
       *[double-across] two resistors, one in series with the contact and one across both
    }
