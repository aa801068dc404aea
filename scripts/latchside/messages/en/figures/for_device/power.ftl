title = Life of the battery
use = Use
current = Average current
life = Life of the battery, at the most
change = Change it

uses = { $uses ->
    [one] { $uses } opening a day
   *[other] { $uses } openings a day
}
first-year = within the first year
after = { $years ->
    [one] after { $years } year
   *[other] after { $years } years
}
after-label = { $years ->
    [one] after { $years } year, the label's limit
   *[other] after { $years } years, the label's limit
}

ceiling =
    A ceiling, never a promise: the interval on the label wins. Cold, repeats on a poor path and a contact that chatters
    shorten it, and a low-battery report wins over both: [[procedure/change-cell]].
ceiling-here =
    A ceiling, never a promise: the interval on the label wins, here { $interval }. Cold, repeats on a poor path and a
    contact that chatters shorten it, and a low-battery report wins over both: [[procedure/change-cell]].
two-reports = Each use makes two reports, opening and closing, and a check-in lasts as long as a report.
by-itself = By itself the battery loses { $loss }.
rounded-down = Years to the change are rounded down.
