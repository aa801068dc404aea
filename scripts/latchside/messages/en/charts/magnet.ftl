title-parallel = Where the magnet works, side by side
title-end-on = Where the magnet works, end on
in-air = In air
above-steel = Both { $height } mm above steel
off-mark = magnet off the mark, to either side, mm
gap = gap, mm
closes = closes
side-lobe = side lobe
dotted = dotted: holds
once-closed = once closed
reed = reed
magnet = magnet

lie-parallel = Magnet and reed lie side by side, both along the edge.
lie-end-on = Magnet and reed lie on one line, end to end.
straight =
    Straight at the mark, in air, the reed closes up to a gap of { $closes } and holds up to { $holds }. With both
    { $steel } above steel it closes only up to { $closes_over_steel }, { $share } of that.
lobes-end-on =
    Side lobes lie beside the reed: with the face of the magnet { $gap } past its end, it closes with the magnet up to
    { $end } to one side. They are no place to fit a magnet.
lobes-parallel =
    Slid along the door or window at a gap of { $gap }, in air, the reed opens at { $opens } off the mark and closes
    again from { $start } to { $end }: that is the side lobe, and a door or window that passes through it trips twice.
