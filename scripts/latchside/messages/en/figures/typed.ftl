no-number = { $typed } is not a number
no-number-in = { $typed } is not a number in { $unit }
too-long = that is too long for a number
too-large = "{ $typed }" is too large

# What was found and what to give instead; without the latter, where something else says it.
many-entries = { $entries } entries; give at most 40
    .found = { $entries } entries
thousands = "{ $typed }" could be { $plain }; write it without the thousands mark
    .found = "{ $typed }" could be { $plain }
thousands-or-decimals = "{ $typed }" could be { $plain } or { $other }; write it without the thousands mark
    .found = "{ $typed }" could be { $plain } or { $other }
no-dbm = "{ $typed }" has no value in dBm; give a power above zero
    .found = "{ $typed }" has no value in dBm
other-unit = "{ $typed }" has the unit "{ $unit }"; give { $wanted }
    .found = "{ $typed }" has the unit "{ $unit }"
unfit-unit = "{ $typed }" is in a unit that does not fit; give { $wanted }
    .found = "{ $typed }" is in a unit that does not fit

wanted-in = a number in { $unit }, or in another unit for the same
wanted-plain = a plain number
