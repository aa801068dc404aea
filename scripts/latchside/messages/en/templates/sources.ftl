summary =
    What figures and facts of this library come from, and how each was read. Editions and local codes differ: the
    authority on site decides.
about = { $kind }, { $publisher }. Edition: { $edition }. Read as: { $seen }.
used-in = Used in: { $users }
