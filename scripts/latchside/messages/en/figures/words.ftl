range = { $low } to { $high }
at-least = at least { $figure }
at-most = at most { $figure }
