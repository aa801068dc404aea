# A name made of what is known of an opening: words that are not known are empty, and the spaces round them go.
name = { $place } { $side } { $kind }
# Where the place is called by its opening, as in "Back door", and `side` is not in the words of its side.
on-side = { $place } { $side } side
side = side

# A number after names that would be the same.
number =
    { $number ->
        [1] one
        [2] two
        [3] three
        [4] four
        [5] five
        [6] six
        [7] seven
        [8] eight
        [9] nine
        [10] ten
        [11] eleven
        [12] twelve
        [13] thirteen
        [14] fourteen
        [15] fifteen
        [16] sixteen
        [17] seventeen
        [18] eighteen
        [19] nineteen
        [20] twenty
       *[other] { NUMBER($number, useGrouping: 0) }
    }

# What an opening is called aloud, by its kind; `short` where a keypad has little room, and as a place may be called.
kind-hinged-door = door
    .short = door
kind-double-door = double door
    .short = door
kind-casement = window
    .short = window
kind-double-hung = sash window
    .short = window
kind-tilt-and-turn = window
    .short = window
kind-sliding = sliding door or window
    .short = slider
kind-lift-and-slide = lift-and-slide door
    .short = door
kind-roof-window = roof window
    .short = window
kind-roller-door = roller door
    .short = door
kind-up-and-over = overhead door
    .short = door
kind-hatch = hatch
    .short = hatch
kind-gate = gate
    .short = gate
kind-any = opening
    .short = opening

# The part of an opening that has a contact of its own, by its kind.
second-double-door = second leaf
    .short = leaf two
    .shortest = leaf 2
second-double-hung = upper sash
    .short = upper
    .shortest = upper
second-hatch = second edge
    .short = edge two
    .shortest = edge 2
second-any = second contact
# Where a keypad has room for no word of it.
second = 2

# Abbreviations of surveys, in full. Those of the compass are of sides alone.
in-full-rm = room
in-full-bdrm = bedroom
in-full-bthrm = bathroom
in-full-ktchn = kitchen
in-full-kit = kitchen
in-full-lvg = living
in-full-lh = left
in-full-rh = right
in-full-gf = ground floor
in-full-wc = toilet
in-full-util = utility
in-full-gar = garage
in-full-ofc = office
in-full-frt = front
in-full-bk = back
in-full-flr = floor
in-full-dwnstrs = downstairs
in-full-upstrs = upstairs
compass-n = north
compass-e = east
compass-s = south
compass-w = west
compass-ne = north-east
compass-nw = north-west
compass-se = south-east
compass-sw = south-west
