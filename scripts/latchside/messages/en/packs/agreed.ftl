# What a time is held to.
least = at least { $time }
most = at most { $time }
as-walked = as short as the way out allows
not-known = region not known: read the panel's instructions
