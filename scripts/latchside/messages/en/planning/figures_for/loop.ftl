# The loop at the terminals of a transmitter.
at-terminals = Loop at the terminals
label =
    The label of the transmitter names one of these, or a plain loop. At most { $longest } to the farthest contact,
    which with its cable reads { $resistance } shut.

# What a meter reads.
reading = Loop reading
states = shut { $shut }; open { $open }
states-assumed = with what is assumed: shut { $shut }; open { $open }
metered =
    { $layout ->
        [none]
            No resistor, metered with the pair off its terminals. A cut reads as an open leaf, and a short as a shut
            one.
        [series] One resistor in series, metered with the pair off its terminals. A cut reads as an open leaf.
        [parallel]
            One resistor across the contact, metered with the pair off its terminals. A cut reads open circuit, and a
            short as a shut leaf.
        [double]
            Two resistors, one in series and one across the contact, metered with the pair off its terminals. A cut
            reads open circuit.
       *[double-across]
            Two resistors, one in series with the contact and one across both, metered with the pair off its terminals.
            A cut reads open circuit.
    } A short reads { $short }.
shared =
    Where both contacts share this loop, one resistor lies across both, and a cut between them reads as an open leaf.

# What is assumed.
layout-assumed = The layout is not known and counts as one resistor in series.
end-assumed = The resistor is not known and counts as { $ohm }.
second-assumed = The second resistor is not known and counts as the same value.

# What the input reads, state by state.
input = Input voltage
voltages = leaf shut { $shut }; leaf open { $open }; pair shorted { $short }; pair cut { $cut }
alike =
    { $states ->
        [shut-open] Leaf shut and leaf open read alike.
        [shut-short] Leaf shut and pair shorted read alike.
        [shut-cut] Leaf shut and pair cut read alike.
        [open-short] Leaf open and pair shorted read alike.
        [open-cut] Leaf open and pair cut read alike.
        [short-cut] Pair shorted and pair cut read alike.
        [shut-open-short] Leaf shut, leaf open and pair shorted read alike.
        [shut-open-cut] Leaf shut, leaf open and pair cut read alike.
        [shut-short-cut] Leaf shut, pair shorted and pair cut read alike.
        [open-short-cut] Leaf open, pair shorted and pair cut read alike.
       *[shut-open-short-cut] Leaf shut, leaf open, pair shorted and pair cut read alike.
    }
apart = All four stand at least { $gap } apart.
others-apart = The others stand at least { $gap } apart.
windows = The document of the control unit has its own windows, and those win.

# Readings to expect.
expected-shut = Loop, leaf shut, { layout }
expected-open = Loop, leaf open, { layout }
expected-short = Loop, shorted at the contact, { layout }
expected-terminals = Loop, leaf open
layout =
    { $layout ->
        [none] no resistor
        [series] one resistor in series
        [parallel] one resistor across the contact
        [double] two resistors, one in series and one across the contact
       *[double-across] two resistors, one in series with the contact and one across both
    }
