rule = A reading of a loop is said with the layout of resistors that it is for.
