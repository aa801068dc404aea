name = Ladder

# What work above a ladder takes.
access = a tower or a powered platform
no-ladder = no leaning ladder
too-high =
    Work with both hands above { $most } is not done from a ladder, by house rule. It takes a tower or a powered
    platform.
overhead =
    It is worked at with both hands above the head, and a ladder has nothing to lean on there: a platform or a tower
    scaffold that stands level, and a second person beside it.
order =
    Order a tower or a powered platform, with people trained on it, and check that it goes in and stands level there.
    Local law decides who may use it, and whether a ladder may be used at all.

foot = foot { $out } out, ladder of at least { $long }
angle =
    One out for four along the ladder, an angle of { $angle }. The top rungs are not stood on, so the ladder is longer
    than this. Steps or a platform come first: a ladder that leans on the door is in the way of its proof.
support = The top support of the ladder is at the height of the work.
