both =
    .found = an expression beside a model
    .expected = one or the other
neither =
    .found = an output without an expression
    .expected = an expression, or a model for the figure
reserved =
    .found = the name "{ $name }", a name of the language
    .expected = another name
taken =
    .found = the name "{ $name }", taken already
    .expected = another name
no-condition =
    .found = a number
    .expected = a condition, such as frequency_mhz >= 100
