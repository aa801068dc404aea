look-at = Look at first:
used-in = Used in: { $users }
