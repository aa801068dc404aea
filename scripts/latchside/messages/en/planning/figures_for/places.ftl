# Where the halves go, by the kind of opening: of a contact on the surface, and of one in holes, end to end across the
# gap.
sensor =
    { $kind ->
        [hinged-door] on the head of the frame at the latch side
        [double-door] on the head of the frame, one for each leaf that opens, at its latch side
        [casement] on the frame at the latch side, high up; hung at the top: at the edge across from the hinges
        [double-hung]
            low on the side stop for the lower sash, at the head for the upper one; never at the meeting rails, which
            both move
        [lower-sash] low on the side stop
        [tilt-and-turn] on the frame at the top of the handle side
        [sliding] on the jamb that the leading edge meets
        [lift-and-slide] on the jamb that the leading edge meets, lined up with the handle home and the door down
        [roof-window] on the frame at the lower edge
        [roller-door] on the wall beside the guide, or on the floor where no wheels cross
        [up-and-over] on the frame low at the side
        [hatch] on the frame at the room side, across from the hinges
        [loose-hatch] on the frame at the room side, one at each of two opposite edges
        [lifting-hatch] on the frame at the room side, across from the hinges, clear of the water that runs in
       *[gate] on the latch post, at the protected side
    }
magnet =
    { $kind ->
        [hinged-door] on the top of the door at the latch side
        [double-door] on top of each leaf that opens, at its latch side
        [casement] on the sash at the same edge, clear of the handle
        [double-hung] on the side of the lower sash, low down, and on the top rail of the upper one
        [lower-sash] on the side of the lower sash, low down
        [tilt-and-turn] on the sash at the top of the handle side
        [sliding] on the leading edge of the sliding door or sash
        [lift-and-slide] on the leading edge of the door
        [roof-window] on the sash at the lower edge, face to face
        [roller-door] on the bottom rail of the curtain
        [up-and-over] on the door low at the side, in sections on the lowest one
        [hatch] on the lid at the room side, across from the hinges
        [loose-hatch] on the lid at the room side, at the same two edges
        [lifting-hatch] on the underside of the lid, across from the hinges
       *[gate] on the gate at the latch edge, at the protected side
    }
drilled-reed =
    { $kind ->
        [hinged-door] in the head of the frame above the latch side
        [double-door] in the head of the frame, one above each leaf that opens
        [casement] in the frame at the latch side, high up
        [double-hung] in a wooden head for the upper sash, in a sill that does not drain for the lower one
        [lower-sash] in a sill that does not drain
        [tilt-and-turn] in the frame at the top of the handle side
        [sliding] in the jamb that the leading edge meets
        [lift-and-slide] in the jamb that the leading edge meets, lined up with the handle home and the door down
        [roof-window] in the frame at the lower edge, its cable in a loop below it
        [roller-door] in the wall beside the guide, or on the floor where no wheels cross
        [up-and-over] in the frame low at the side
        [hatch] in the frame across from the hinges
        [loose-hatch] in the frame, one at each of two opposite edges
        [lifting-hatch] in the frame across from the hinges, where no water stands
       *[gate] in the latch post, at the protected side
    }
drilled-magnet =
    { $kind ->
        [hinged-door] in the top edge of the door
        [double-door] in the top edge of each leaf
        [casement] in the edge of the sash opposite
        [double-hung] in the top rail of the upper sash, in the bottom rail of the lower one
        [lower-sash] in the bottom rail of the lower sash
        [tilt-and-turn] in the sash at the top of the handle side
        [sliding] in the leading edge of the sliding door or sash
        [lift-and-slide] in the leading edge of the door
        [roof-window] in the sash at the lower edge, face to face
        [roller-door] in the bottom rail of the curtain
        [up-and-over] in the door low at the side, in sections in the lowest one
        [hatch] in the edge of the lid opposite
        [loose-hatch] in the edges of the lid opposite
        [lifting-hatch] in the edge of the lid opposite
       *[gate] in the gate at the latch edge, at the protected side
    }

# What is never drilled there.
never =
    { $kind ->
        [hinged-door] lock and what it shuts into, rods
        [double-door] lock, and the bolts of the second leaf
        [casement] gear of the handle, glass and bead, a bottom that drains
        [double-hung] jambs with weights and cords, glass, a sill that drains
        [lower-sash] jambs with weights and cords, glass, a sill that drains
        [tilt-and-turn] gear round the edge, seals, drain chambers, thermal break, glass
        [sliding] lock, a bottom track that drains, edge of the glass
        [lift-and-slide] lift gear in the latch edge, threshold and bottom track, glass
        [roof-window] seal, flashing, edge of the glass
        [roller-door] slats, guides, roll and spring, a floor whose pipes and cables are not known
        [up-and-over] springs and arms, lock and rods
        [hatch] where cables cross above, ladder and spring
        [loose-hatch] where cables cross above
        [lifting-hatch] seal and drain channel, hinges and stay, lid where feet or wheels cross it
       *[gate] latch and lock, the foot of the post
    }
