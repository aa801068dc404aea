expected = a length such as 4 mm, 3/16 in, 12 ft 6 in or 2.5 m

# What was found instead of a length.
no-length = { $typed }, which is no length
only-signs = { $typed }, no length
nothing = nothing, where a length is needed
below-zero = { $typed }, which is below zero
out-of-bounds = { $typed }, which is no length of an opening or a site
too-long = { $typed }, which is too long for a length
no-unit = { $typed }, where { $figure } has no unit
unknown-unit = { $typed }, where { $unit } is no unit of length
several = { $typed }, which is more than one length
broken-feet = { $typed }, where the feet are no whole number
thousands = { $typed }, which could be { $plain } or { $other }
no-fraction = { $typed }, where { $fraction } is no fraction to read
