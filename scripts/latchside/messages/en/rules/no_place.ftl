rule = A device that has no magnet says where it is fixed on each kind of opening it is for.

not-told =
    .found = nothing says where { $device } is fixed on: { $kinds }
    .expected = place: an entry with these kinds under on
    .action = Add the place, or take the kind out of openings.

kind-not-listed =
    .found = a place on { $kind }, which is not listed
    .expected = a kind under openings
    .action = Add the kind to openings, or take it out here.
