rule = A measuring step states the expected value, unit, tolerance and what to do outside.
