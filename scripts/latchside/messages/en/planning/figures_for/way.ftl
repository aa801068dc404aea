# What is assumed of the way.
walls = The walls on the way are not known: in a bad spot as in an average building, else none.
floors = The floors on the way are not known: one in a bad spot, none in a good one.
floors-any =
    The kind of building is not known: floors take the most of any in a bad spot, the least else, { table }.
floors-differ =
    Floors of this kind of building differ: the most of them in a bad spot, the least else, { table }.
floors-kind = Floors of this kind of building, { table }.
table = after ITU-R P.1238, most of whose rows stand at higher frequencies
outer-wall =
    Whether the way crosses the outer wall is not known: one with foil in a bad spot, none in a good one.
mounting = { $loss } are taken off for a small aerial and its mounting.
metal = { $loss } more for metal behind the body.
metal-not-known = Whether metal lies behind the body is not known: { $loss } in a bad spot.
