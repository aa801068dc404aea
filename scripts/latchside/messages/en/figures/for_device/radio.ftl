supervision-title = Check-ins and the supervision window
path = Path
tries = Check-ins in one window
chance = Chance that all are lost
false-trouble = False trouble, one device
lost = { $share } of check-ins lost
one-in = 1 in { $number }
rarer = rarer than 1 in { $number }
a-year = { $times } a year
once-in = once in { $years } years
rarer-than-once = rarer than once in { $years } years

one-missed =
    One missed check-in shows nothing: trouble shows when all { $tries } in a row are lost, and a device that has died
    goes unnoticed for up to { $window }. Improve a path that loses many; do not widen its
    window: [[procedure/try-radio-margin]].
by-itself = Each loss is taken by itself. Real losses come together, behind a metal door that stands closed.
slow = At the slow end of the tolerance of the check-in, { $tries } fall within the window.
grades =
    The window is that of a site without a grade. Under EN 50131-1 a device that only sends checks in every
    { $sends-first } or less at grade 1, { $sends-second } at grade 2; one that is polled when the system is set, every
    { $polled-first } or less at grade 1, { $polled-second } at grade 2. By itself this one keeps { $kept }.
no-grade = no grade

margin-title = Radio margin through common walls
way = Way of the signal
at-band = At { $band }
way-at = { $way }, { $distance }

# Ways of the signal, and each within a sentence.
way-room = Same room
    .inside = same room
way-walls = Two brick walls inside
    .inside = two brick walls inside
way-floor = One floor and one brick wall
    .inside = one floor and one brick wall
way-older = Through the wall of an older building
    .inside = through the wall of an older building
way-foil = Through foil and coated glass
    .inside = through foil and coated glass

spots =
    Each cell is a bad, a middling and a good spot. The proof is [[procedure/try-radio-margin]] with the part taped
    where it will stay.
weak-spots =
    Each cell is a bad, a middling and a good spot. Below the { $least } to accept, in a bad spot: { $ways }. The proof
    is [[procedure/try-radio-margin]] with the part taped where it will stay.
weak-way = { $way } ({ $bands })
none = none

power-at = { $power } at { $band }
radiated =
    Radiated: what the label allows, or the limit of the band where it is less, { $powers }. A limit is not the output
    of a real part, so { $mounting } are taken off for a small aerial and its mounting.
receiver = A receiver that reads signals down to { $sensitivity }.
floor = A floor as in a home. One of concrete, in flats or offices, takes two or three times as much.
spread = Spread of { $spread } either way, from one spot to the next.
brick =
    A dry brick wall of { $thickness }, drawn out beyond the table of the standard. An outer wall is the middle of many.
lower-limit = In the United States the limit at { $band } is { $less } lower, and so is each margin there.
