# The door or window at rest: does the reed close?
gap = Gap and make distance
fit-to = fit to { $range }
gap-fit-to = { $gap }, fit to { $range }
by-label = by the label of the wired contact
of-contact =
    The transmitter reports a loop. Gap and make distance are those of the wired contact on it: gap, play and sag stay
    below the make distance on its label with a margin, and gap and play below its break distance.
not-measured = The gap was not measured. It is measured, closed and latched, before a device is packed.
# Play is not spoken of where there is none.
together =
    { $play ->
        [yes] Gap, play and sag together, { $sum },
       *[no] Gap and sag together, { $sum },
    }
too-wide =
    { together } are more than the make distance that is sure, { $make }. The zone may stay open with the door or
    window closed. Choose a contact with a longer make distance, or bring the halves nearer to each other.
too-near-drilled = Less than the least gap to fit to, { $least }: they would touch. Let the flanges in deeper.
too-near = Less than the least gap to fit to, { $least }: they would touch. Set the halves apart.
little-left =
    { together } leave too little of the make distance, { $make }. Tape the halves nearer to each other, or choose a
    contact with a longer make distance.
little-left-on-steel =
    { together } leave too little of the make distance that steel would leave, { $make }. Tape the halves nearer to each
    other, or choose a contact with a longer make distance.
wide = Wider than the gap to fit to, { $most }. Tape the halves nearer.
good = { together } stay below the make distance that is sure, with { $spare } to spare.
win-back = Spacers, a bracket or packing under both halves win some of the make distance back.

# The door or window pushed and pulled: does the reed stay closed?
push = Push and break distance
pushed = { $pushed } pushed, opens at { $opens } or more
push-good = Pushed and pulled through all its play, the latched door or window does not open the reed.
push-opens = A push or a gust alone opens the zone. { adjust }
push-too-near = Pushed in, the gap is less than a balanced contact takes, { $least }. { adjust }
push-opens-on-steel = Flush on steel a push or a gust opens the zone. { adjust }
push-across = A hinged door or window moves across the barrels, and only { $across } is allowed there. { adjust }
adjust = Have hinge or latch adjusted first, and move no magnet to make up for it.

latch = Latch
latch-play = { $play } of play
latch-loose =
    A loose latch: the closed door or window moves more than { $loose }. Whether it harms the contact is said beside
    the push. Tell the customer, and have hinge or latch adjusted.

# The step between the surfaces.
spacer = Spacer
no-spacer-does = No spacer makes up such a step. Another place or another device is chosen.
spacers =
    { $measured ->
        [yes] { pieces }
        [beyond] beyond any spacer
       *[no] if the surfaces are level: { pieces }; if they are stepped: by the step, measured first
    }
pieces =
    { $count ->
        [0] no spacer
        [1] one spacer { under }
        [2] two spacers { under }
       *[other] { $count } spacers { under }
    }
# The same at the start of a sentence.
spacers-first =
    { $measured ->
        [yes]
            { $count ->
                [0] No spacer
                [1] One spacer { under }
                [2] Two spacers { under }
               *[other] { $count } spacers { under }
            }
        [beyond] Beyond any spacer
       *[no] If the surfaces are level: { pieces }; if they are stepped: by the step, measured first
    }
under =
    { $under ->
        [magnet] of { $size } under the magnet
       *[sensor] of { $size } under the sensor
    }
level = The two are then level.
level-within = { $offset } of offset in height is left, within { $most }.
offset-left =
    { $offset } of offset in height is left, more than { $most }. Where the spacers run out, another device is chosen.
step-decides =
    The step decides, and nobody measured it: measure it before spacers are chosen. With none, the two are then level.
step-decides-offset =
    The step decides, and nobody measured it: measure it before spacers are chosen. With none, { $offset } of offset in
    height is left.

# What is assumed.
steel-not-known = Whether steel lies near is not known: the limit shown is that on steel.
play-not-known = The play is not known and counts as none.
sag = { $sag } are added for sag and season.
in-place = The contact in place counts as one of this class, and its own label may say less.
equally-deep = Reed and magnet lie equally deep below the tops of their bodies.

# Readings.
fit-gap = Sensor to magnet, face to face, closed and latched
fit-gap-steel = { $free }; at most { $steel } where a test magnet finds steel

# A window whose two sashes pass each other.
clearance = Clearance at the upper sash
proud = magnet and spacers stand { $proud } proud
passes =
    Tape the magnet to the upper sash, raise the lower sash fully and lower the upper one: nothing may touch. Where it
    does, fit a recessed contact in the head if it may be drilled, or a stop that keeps the lower sash below the magnet.
