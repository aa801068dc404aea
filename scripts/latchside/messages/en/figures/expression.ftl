found-expected = { $found }; expected { $expected }

# Why an expression is refused: what was found in it, and what is allowed instead.
too-long =
    .found = { $length } characters
    .expected = at most { $most }
strange-sign =
    .found = the sign { $sign }
    .expected = letters, digits, and + - * / % ( ) , . < > = ! _
no-expression =
    .found = something that is no expression
    .expected = such as 2 * length_m / area
list =
    .found = a list by itself
    .expected = a number or a condition; use the list inside sum(…)
many-parts =
    .found = more than { $most } parts
    .expected = several shorter expressions, under let
many-levels =
    .found = more than { $most } levels
    .expected = several shorter expressions, under let
not-allowed =
    .found = "{ $text }"
    .expected = numbers, names, + - * / ** %, comparisons and known functions
other-sort =
    .found = "{ $text }", { $sort ->
        [condition] a condition
        [list] a list
       *[number] a number
    }
    .expected = { $wanted ->
        [condition] a condition
        [list] a list
       *[number] a number
    }
no-decimal =
    .found = "{ $text }"
    .expected = a decimal number such as 0.25 or 1e-6
out-of-range =
    .found = "{ $text }"
    .expected = zero, or a number from { $low } to { $high }
unknown-name =
    .found = the name "{ $name }"
    .expected = a name declared before: { $known }
power-of-power =
    .found = the power of a power "{ $text }"
    .expected = one power; name the other under let
large-exponent =
    .found = the exponent in "{ $text }"
    .expected = at most { $most }
large-base =
    .found = the base in "{ $text }"
    .expected = at most { $most }
unclear-power =
    .found = "{ $text }"
    .expected = a power with a name in it, or of two plain numbers
comparisons =
    .found = "{ $text }"
    .expected = one comparison: < <= > >= == or !=
unknown-call =
    .found = the call "{ $text }"
    .expected = a known function by its name
arguments =
    .found = the call "{ $text }"
    .expected = plain arguments
list-arguments =
    .found = { $count ->
        [one] { $count } argument of { $function }
       *[other] { $count } arguments of { $function }
    }
    .expected = { $needed }: a list first
unknown-function =
    .found = the function "{ $function }"
    .expected = one of: { $known }
other-count =
    .found = { $count ->
        [one] { $count } argument of { $function }
       *[other] { $count } arguments of { $function }
    }
    .expected = { $low }
count-out-of-range =
    .found = { $count ->
        [one] { $count } argument of { $function }
       *[other] { $count } arguments of { $function }
    }
    .expected = { $low } to { $high }
piecewise =
    .found = { $count ->
        [one] { $count } argument of piecewise
       *[other] { $count } arguments of piecewise
    }
    .expected = value, condition, …, and a default at the end
mixed =
    .found = "{ $text }"
    .expected = values of one sort: all numbers, or all conditions
