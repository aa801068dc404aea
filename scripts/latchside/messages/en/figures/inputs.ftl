# What an input accepts.
one-of = one of { $words }
true-or-false = true or false
from-to = { $sort ->
    [many] numbers from { $low } to { $high }
    [many-whole] whole numbers from { $low } to { $high }
    [whole] a whole number from { $low } to { $high }
   *[one] from { $low } to { $high }
}
or-more = { $sort ->
    [many] numbers of { $low } or more
    [many-whole] whole numbers of { $low } or more
    [whole] a whole number of { $low } or more
   *[one] of { $low } or more
}
or-less = { $sort ->
    [many] numbers of { $high } or less
    [many-whole] whole numbers of { $high } or less
    [whole] a whole number of { $high } or less
   *[one] of { $high } or less
}
any = { $sort ->
    [many] numbers
    [many-whole] whole numbers
    [whole] a whole number
   *[one] a number
}

# What is wrong with a value.
not-true-or-false = "{ $typed }" is neither true nor false
not-among = "{ $typed }" is not { $accepts }.
out-of-range = { $figure } is out of range; give { $accepts }
    .found = { $figure } is out of range
not-whole = { $figure } is not whole; give { $accepts }
    .found = { $figure } is not whole

# What is wrong with the inputs, a line each.
refused = { $name }: { $found }
refused-takes = { $name }: { $found }; it takes { $accepts }
twice = { $name }: given twice
unknown = { $name }: unknown; this figure takes { $inputs }.
ambiguous = { $name }: could be { $names }; give the full name
only-with = { $name }: only with { $wanted }; leave it out
both = { $name }: given beside { $other }; give one of the two
default-refused = { $name }: its own default is refused: { $found }
missing = { $names }: missing; give { $labels }
