look-at = Look at first:
also-called = Also called
used-in = Used in
