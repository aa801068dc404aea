rule = Likelihoods are for causes a result leaves, add up to one, and no two results say the same.

likelihood-not-left =
    .found = a likelihood for { $cause }, which this result does not leave
    .expected = causes listed under its leaves
    .action = Add the cause to leaves, or drop its likelihood.

sum =
    .found = likelihoods of { $cause } that add up to { $total }
    .expected = 1 over the results that leave it
    .action = Correct them, or correct which results leave the cause.

sum-with-silent =
    .found = likelihoods of { $cause } that add up to { $total }
    .expected =
        { $count ->
            [one] less than 1, since 1 more result leaves it
           *[other] less than 1, since { $count } more results leave it
        }
    .action = Correct them, or correct which results leave the cause.

same-causes =
    .found = a result that leaves the same causes as { $result }
    .expected = results that tell causes apart, or a likelihood that does
    .action = Join the two, correct what they leave, or say how likely each is.
