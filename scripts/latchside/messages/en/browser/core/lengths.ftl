two-ways = { $text } can be read two ways. Type it without the comma, or with a point.
