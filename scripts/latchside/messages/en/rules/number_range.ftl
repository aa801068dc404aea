rule = Limits stand the right way round, and a device value has a unit that fits its name.

limits-crossed =
    .found = min { $least } above max { $most }
    .expected = min at most max
    .action = Swap or correct them.

wrong-unit =
    .found = { $unit } for { $value }
    .expected = a unit of { $dimension }: { $fitting }
    .action = Correct the unit.
