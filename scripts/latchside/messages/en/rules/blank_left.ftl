rule = A marked blank of a new record is filled in.
