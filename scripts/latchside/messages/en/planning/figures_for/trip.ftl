name = Trip at the leading edge
label =
    { $kind ->
        [tilt-and-turn] Opening edge when the zone shows open, sash turned
        [lift-and-slide] Opening edge when the zone shows open, door slid
       *[other] Opening edge when the zone shows open
    }
label-tilted = The same at the top edge, sash tilted
label-lifted = Zone with the door lifted and not yet slid
lifted = closed or open: write which

# Push and pull the closed door or window.
play = Play, pushed and pulled, closed and latched
no-trip = no trip; write the play down
shown = up to { $opened }, limit { $limit }

too-late = The edge has passed its limit before the contact trips. Choose a contact that trips sooner.
held = Fixed within { $distance } of the leading edge, it trips inside the limit. Farther away it may not.
inside = The contact trips inside the limit.

# Whether a flat hand passes before the contact trips.
no-hand = A flat hand, { $hand }, does not pass.
hand = A flat hand, { $hand }, may pass: a target of the house, and no limit.
hand-within = Fixed within { $distance } of the leading edge, it trips before a flat hand, { $hand }, passes.

# What is assumed.
corner = The contact is fixed within { $distance } of the latch-side corner.
width = The width of the door or window was not measured: { $width } by the house rule, on the narrow side.
region = The region is not known: the target of the house is taken.
