range = { $low }–{ $high }
at-least = ≥ { $figure }
at-most = ≤ { $figure }
one-of = one of { $count }
one-of-within = one of { $count }, { $tolerance }
