name = Radio margin
not-worked = not worked
not-heard = not heard
range =
    { $least ->
        [nothing] nothing to { $most }
       *[other] { $least } to { $most }
    }

# Why it cannot be heard.
no-band = No band of the region holds { $frequency }.
other-frequency = The receiver is for { $heard }, and this class is made for { $made }.
order-other-band =
    It would not be heard. Order the device that the receiver lists for this region, add a receiver for it, or wire the
    opening.

# What the margin comes to, and what to do about it.
no-distance = The distance is not known, so no margin is worked.
outside = The way is outside the figure, so no margin is worked.
unheard = Even in a good spot it is not heard.
too-low = Even in a good spot it stays below the { $least } to accept.
good = Even in a bad spot it keeps the { $least } to accept.
good-if = It would keep the { $least } to accept, but that rests on what is assumed.
falls-below = In a bad spot it falls below the { $least } to accept.
order-nearer = Put a repeater or a receiver nearer, set the device where the way is freer, or wire the opening.
proof = The proof is the trial with the part taped in its place, every metal door closed.

# What is assumed.
receiver-not-known =
    The frequency of the receiver is not known: the worst and the best of those that the region has.
taken-for =
    { $heard } is taken for { $made }. Both labels name the very same, or it is not heard.
power =
    Radiated power: the label's, or the limit of the region where that is less. A real part sends less.
canada = Limits of RSS-210 of Canada, from memory: check your edition. The label carries its mark.
united-kingdom =
    Bands of the European recommendation, which IR 2030 of the United Kingdom takes over, from memory.
region-not-known =
    The bands of the region are not known: the smaller limit in a bad spot, the larger in a good.
sensitivity = The receiver is taken to read down to { $dbm }, a typical one.
