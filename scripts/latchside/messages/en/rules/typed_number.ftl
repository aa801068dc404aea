rule = A number with a unit is never typed in text; it comes by reference from a value.

typed =
    .found = "{ $number }" typed in text
    .expected = a reference such as [[=name]] to a value
    .action = Add it under values and refer to it.
