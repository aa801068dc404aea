# Where the halves of a contact go. How far from the corner is said only where it matters.
# $kind is the word of the survey for the kind of opening.
from =
    { $kind ->
        [double-door] the meeting edge, clear of the bolts of the second leaf
       *[other] the corner
    }
sensor =
    { $along ->
        [none] Sensor { $place }, its mark towards the magnet.
       *[other] Sensor { $place }, { $along } from { from }, its mark towards the magnet.
    }
magnet = Magnet { $place }, its middle at the mark.
reed =
    { $along ->
        [none] Reed { $place }.
       *[other] Reed { $place }, { $along } from { from }.
    }
reed-magnet = Magnet { $place }, on one line with the reed.
housing =
    { $along ->
        [none] Housing { $place }, its mark towards the magnet, its tail away from the door or window.
       *[other]
            Housing { $place }, { $along } from { from }, its mark towards the magnet, its tail away from the door or
            window.
    }
housing-magnet = Magnet on its bracket { $place }, its middle at the mark.
no-place = Nothing says where it goes on such an opening: ask before anything is fixed.

# Where a transmitter goes, and the wired contact on its loop.
transmitter =
    { $end ->
        [yes]
            Transmitter where the cable of the contact ends, on the wall: dry, in reach, at least { $metal } from large
            metal and { $mains } from cables of 120 or 230 V.
       *[no]
            Transmitter on the fixed part or the wall beside the opening: dry, in reach, at least { $metal } from large
            metal and { $mains } from cables of 120 or 230 V.
    }
on-loop = The { $contact } on its loop: { $place }
on-loop-any = The magnet of the wired contact goes { $magnet }; its other half { $reed }.
on-loop-magnet =
    { $along ->
        [none] The magnet of the { $contact } goes { $magnet }; its other half { $reed }.
       *[other] The magnet of the { $contact } goes { $magnet }; its other half { $reed }, { $along } from { from }.
    }
on-loop-bracket =
    { $along ->
        [none] The magnet of the { $contact } goes { $magnet }; its housing { $reed }.
       *[other] The magnet of the { $contact } goes { $magnet }; its housing { $reed }, { $along } from { from }.
    }

# A contact in place that stays.
sensor-stays = The contact in place stays where it is.
magnet-stays = The magnet in place stays where it is.
nothing-moved = None: nothing is moved.

# What goes under or round the halves; of the contact on the loop where that is spoken of.
pieces-bracket =
    { $steel ->
        [yes] { pieces-of-bracket }, which holds the magnet off the steel.
        [unknown] { pieces-of-bracket }, which holds the magnet off any steel.
       *[no] { pieces-of-bracket }.
    }
pieces-of-bracket =
    { $contact ->
        [on-loop] None at the transmitter; the wired contact: the bracket supplied, slid in its slots
       *[own] The bracket supplied, slid in its slots
    }
pieces-sleeve =
    { $contact ->
        [on-loop]
            None at the transmitter; the wired contact: a plastic sleeve round each half, against the steel.
       *[own] A plastic sleeve round each half, against the steel.
    }
pieces-none =
    { $contact ->
        [on-loop] None at the transmitter, and none with the wired contact.
       *[own] None with this contact.
    }
pieces-sleeve-on-steel =
    { $contact ->
        [on-loop]
            None at the transmitter, and none with the wired contact; where a test magnet finds steel: a plastic sleeve
            round each half, against the steel.
       *[own]
            None with this contact; where a test magnet finds steel: a plastic sleeve round each half, against the
            steel.
    }
pieces-both-halves =
    { $contact ->
        [on-loop] None at the transmitter; the wired contact: the same spacers under both halves, off the steel.
       *[own] The same spacers under both halves, off the steel.
    }
pieces-spacers =
    { $steel ->
        [yes] { pieces-of-spacers }; against the steel as many more under both halves as are supplied.
        [unknown]
            { pieces-of-spacers }; where a test magnet finds steel: as many more under both halves as are supplied.
       *[no] { pieces-of-spacers }.
    }
pieces-of-spacers =
    { $contact ->
        [on-loop] None at the transmitter; the wired contact: { $spacers }
       *[own] { $spacers }
    }
pieces-packing = None at the transmitter; the wired contact: its bracket, or spacers under both halves, against the steel.
pieces-profile = None at the transmitter; the wired contact: by its own profile.

# How high.
height-unknown = Not known.
height-unknown-high = Not known; high up, where feet do not come.
height-access = { $height } above the floor, from a tower or a powered platform.
height-platform = { $height } above the floor, from a platform or a tower scaffold, with a second person.
height-ladder = { $height } above the floor, from steps or a platform.
height-floor = { $height } above the floor.

# How it is held. Sentences that follow each other.
drilled =
    Drilled: { $hole } across and { $depth } deep in each half, more behind the reed.
drilled-plain = Drilled: { $hole } across and { $depth } deep, more behind it for its leads.
drilled-by-label = Drilled: across and deep as its label says, which is read before any bit is chosen.
glass = Glass begins { $rail } from the edge.
glass-clear = Measure to the glass: no screw that long.
glass-clear-at = Glass { $rail } from the edge: no screw that long, none at the bead.
sound = Only where the material is sound and what lies behind is known.
not-agreed = The place is asked for first: drilling is not agreed.
bracket = Anchors or screws for the housing, locking washers on the bracket.
bracket-and-tail = Anchors or screws for the housing, locking washers on the bracket, clamps for the tail.
screws-and-plugs = Screws and plugs, because a pull at the cable takes a pad off.
screws = Screws.
screws-or-pads = Screws where the material takes them, pads where a hole would harm it.
screws-metal = Screws, or pads on clean bare metal.
screws-metal-magnet = Screws of a metal that a magnet does not pull, or pads on clean bare metal.
screws-aluminium =
    { $magnet ->
        [yes] Short screws of a metal that a magnet does not pull; else pads, on a clean, sound surface.
       *[no] Short screws; else pads, on a clean, sound surface.
    }
inner-chamber = No screw and no hole beyond the inner chamber, into a thermal break or a drain.
pads = Pads on a clean, warm, dry surface, full strength after a day.
no-hole-in-glass = No hole in glass.
pads-bear-half =
    Each pad bears several times the weight of its half. Metal clips hold the cable along the wall, stuck trunking only
    on the frame.
pads-bear-body =
    Each pad bears several times the weight of the body. Metal clips hold the cable along the wall, stuck trunking only
    on the frame.

# Where no hole may be, and a contact that stays.
no-hole =
    No new hole and no new screw unless its listing, its certificate or its maker allows it, and the local code; pads of
    a stated load only as far as they allow.
before-known =
    { $what ->
        [fire] No hole before it is known whether it is fire-rated.
        [escape] No hole before it is known whether it is an escape way.
       *[both] No hole before it is known whether it is fire-rated or an escape way.
    } After that: { $usual }
no-place-for-holes = Nothing may be drilled, so this contact has no place here.
on-the-wall =
    The transmitter is screwed to the wall beside the opening, not to door or frame: a pull at its cable takes a pad
    off.
no-hole-on-loop = The contact on its loop: no hole and no screw in door or frame.
sound-stays = The sound contact in place stays, and nothing is drilled for it.
second-new = The second contact is new.
second-no-hole = No hole and no screw for it.
never = Never drilled: { $parts }.

# What the hardware of a door asks of the place of a contact.
panic-bar = Panic bar: no part and no cable on the bar, in its swing or at its latch and rods.
magnetic-lock = Magnetic lock: at the other end of the head from it.
magnetic-lock-stray =
    Magnetic lock: at the other end of the head from it. Its field can hold a reed closed or open, so it is tried locked
    and released.
electric-strike = Electric strike: no hole near its cable. It is tried locked and released.
closer = Closer: clear of its arm through the whole swing.
powered = Powered: the drive is isolated and locked off before hands or tools go near it.
