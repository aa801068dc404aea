rule = A measuring step states the expected value, unit, tolerance and what to do outside.

no-measure =
    .found = a measuring step without measure
    .expected = what is measured, the expected value with unit and tolerance, and what to do outside
    .action = Add measure with what, expect and outside.

no-tolerance =
    .found = an expected value without tolerance
    .expected = tolerance, or min and max
    .action = Say how far a good reading may be off.

step-measures-nothing =
    .found = measure: step, and { $step } measures nothing
    .expected = a step with measure
    .action = Name the step that measures, or state the measurement here.
