rule = A condition can be met by an opening its device is used on, and a weight has a condition.

no-condition =
    .found = { $mark } without when
    .expected = a condition that it counts for
    .action = Say under when what has to hold, or take it out.

kind-not-listed =
    .found = { $kind }, on which { $device } is not used
    .expected = a kind that stands under openings
    .action = Add it to openings, or drop it here.
