no-figure = No figure: write it in digits, as 12 or 2.5.
not-whole = A whole number is needed.
out-of-range = From { $low } to { $high } { $unit }. Look for a slip of the point or of the unit.
no-file = it holds no house rules
unknown = this library has no such rule
other-unit = its unit has to be { $unit }
in-rule = { $rule }: { $fault }
