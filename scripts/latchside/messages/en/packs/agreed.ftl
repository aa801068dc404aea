# What a time is held to.
least = at least { $time }
most = at most { $time }
as-walked = no longer than the way out takes
not-known = region not known: read the panel's instructions
