# The cable of an opening.
cable =
    { $there ->
        [yes] There already, { $size }: { $run }. Meter it before you trust it.{ cores }
       *[no] New run, { $size }: { $run }.
    }
cable-unknown = There already, its size not known: { $run } if it is as usual. Meter it before you trust it.{ cores }
# Two loops of one opening on a cable that is there.
cores =
    { $loops ->
        [1] {""}
       *[other] {" "}Its { $loops } loops take { $cores } conductors: count those that are free. Too few: stop, and call
            the lead.
    }

# The resistor of its loop.
resistor =
    { $layout ->
        [none] None: the loop has no resistor.
        [series] { $end }, in series at the contact.
        [parallel] { $end }, across the contact.
        [double] { $end } in series at the contact, { $second } across the contact.
       *[double-across] { $end } in series with the contact, { $second } across both.
    }
resistor-unknown = Not known: read layout and value in the panel's instructions before anything is soldered.
resistor-of-label = { $ohm }, the one that the label of the transmitter names, at the contact.

# Two contacts that are told apart by name.
either = { $one }; { $other }

# A figure that is the same at all openings of a class.
line = { $shown }. { $meaning }

# Beneath codes to scan.
code-install = Fitting
code-prove = Proof
code-fault = Faults
