rule = A number with a unit is never typed in text; it comes by reference from a value.
