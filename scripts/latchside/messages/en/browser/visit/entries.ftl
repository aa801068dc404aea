over-range = over range
