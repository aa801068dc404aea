# What is assumed of the walls.
not-measured =
    { first } that nobody measured counts as { $low } to { $high }: the worst of them in a bad spot, the best in a good
    one.
not-to-the-millimetre =
    A thickness that is not known to the millimetre counts with all that it may be, as loss swings with it.
drawn-out = { $materials }: drawn out beyond the table of the standard, dry and whole.
metal = Nothing gets through metal; in a good spot as much gets round it as in a tenth of foiled buildings.
foil = Foil counts as walls with foil do; in a good spot as much gets round it as in a tenth of foiled buildings.

# A material as the first word of a sentence, and within one.
first =
    { $material ->
        [brick] Brick
        [concrete] Concrete
        [plasterboard] Plasterboard
        [wood] Wood
        [glass] Glass
        [chipboard] Chipboard
       *[plywood] Plywood
    }
within =
    { $material ->
        [brick] brick
        [concrete] concrete
        [plasterboard] plasterboard
        [chipboard] chipboard
       *[plywood] plywood
    }
