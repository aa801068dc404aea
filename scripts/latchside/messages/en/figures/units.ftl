unit-year = { $count ->
    [one] year
   *[other] years
}
unit-month = { $count ->
    [one] month
   *[other] months
}
unit-day = { $count ->
    [one] day
   *[other] days
}
unit-rung = { $count ->
    [one] rung
   *[other] rungs
}
unit-percent-a-year = % a year
unit-a-day = a day
unit-a-year = a year
