rule = A fault is small enough for its plan to be worked out exactly on a phone.
