rule = A result states a value or a state, never only OK, checked or set.
