rule = A command with a hazard of its own has its caution at that step or earlier.
