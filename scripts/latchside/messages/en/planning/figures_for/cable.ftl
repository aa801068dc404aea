name = Cable
not-worked = not worked
run = { $length }, both conductors { $ohm }

not-measured = Its length was not measured, or its size is out of range, and no resistance is worked.

# How much the leads may add, and why; then how long a run of this cable that is.
room-none = The leads may add { $ohm }: the loop has no resistor, and still has to read near zero.
room-parallel = The leads may add { $ohm }: the loop still has to read near zero with the door closed.
room-band = The leads may add { $ohm }: { $share } of { $end }, which the tolerance of the resistors leaves.
room-usual =
    The leads may add { $ohm }: { $share } of { $end }, which the tolerance of the resistors leaves, the smallest of the
    usual resistors.
longest = With this cable that is a run of { $length }.

# What the run comes to, and what to do about it.
existing = The existing cable is metered before it is trusted.
not-known = Layout and resistor of the panel decide, and they are not known.
at-the-limit = The run is at the limit: meter it with its far ends joined before it is covered.
too-much = The run adds too much. Order a nearer input, or a transmitter at the opening.
too-thin =
    The run adds too much. Order cable of at least { $area }, or spare cores joined side by side, or a nearer input, or
    a transmitter at the opening.

# What is assumed of its size.
usual-gauge = A new cable of the usual gauge there.
size-existing = The existing cable counts as { $area }: its size is not in the survey.
size-new = A new cable of { $area } is taken: order that, or thicker.

# What the existing or the new run should read.
expected = Cable, far ends joined, without the leads of the meter

# The run from a contact to the terminals of a transmitter.
loop-name = Cable of the loop
loop-there = at most { $longest }
loop-run = { $planned } planned, at most { $longest }
loop-at-most = From the transmitter to the farthest contact, by the label of the transmitter. Clear of mains cable.
loop-fits =
    Within { $longest }, which the label of the transmitter allows. The existing cable is metered before it is trusted.
loop-part = at most { $longest } of the { $length } there
loop-along = Set the transmitter within { $longest } of the contact along the cable, and meter that part of it.
loop-too-long = Longer than { $longest }, which the label of the transmitter allows to the farthest contact.
loop-shorter =
    Set the transmitter nearer to the contact and cut the loop there, order one whose label allows the run, or land the
    cable at the panel.
