rule = A profile states the values and parts that its traits ask for, and none that do not fit.

value-not-stated =
    .found = nothing states the value { $name }, and the device is one with { $traits }
    .expected = { $name } under values
    .action = Add it, or correct the traits.

part-not-listed =
    .found = nothing states a part that is a { $word }, and the device is one with { $traits }
    .expected = a part with role: { $name }
    .action = Add it, or correct the traits.

does-not-fit =
    .found = { $name }, and the device is none with { $traits }
    .expected = what goes with its traits
    .action = Take it out, or correct the traits.
