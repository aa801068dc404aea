# What a keypad shows of a name.
limit =
    { $lines ->
        [one] { $letters } letters
       *[other] { $lines } lines of { $letters } letters
    }
