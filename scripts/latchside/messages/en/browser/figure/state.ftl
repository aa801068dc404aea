missing = Missing. Give { $accepts }.
one-of-two = Give one of the two and leave the other empty.
