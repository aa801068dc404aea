rule = A limit of a condition is in a unit that fits its field, or a value that the device states.
