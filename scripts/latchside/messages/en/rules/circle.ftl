rule = No procedure draws itself in, directly or by way of others.

circle =
    .found = a circle, in which each draws in the next: { $procedures }
    .expected = steps that end
    .action = Take the draw out of one of them.
