title = Battery life and check-in
check-ins = time between check-ins
life = life at the most, years
planned = longest that is planned with
tick-1-min = 1 min
tick-10-min = 10 min
tick-1-h = 1 h
tick-6-h = 6 h
tick-1-day = 1 day
key-cylinder = larger cylinder, { $capacity }
key-small = small cylinder, { $capacity }
key-coin = coin cell, { $capacity }

lasts-cylinder =
    the larger cylinder of { $capacity } lasts { $minute } at one minute, { $hour } at one hour and { $day } at one day
lasts-small =
    the small cylinder of { $capacity } lasts { $minute } at one minute, { $hour } at one hour and { $day } at one day
lasts-coin =
    the coin cell of { $capacity } lasts { $minute } at one minute, { $hour } at one hour and { $day } at one day
about =
    A contact with { $standby } in standby, used { $uses } times a day. At the most, { $lives }. Check-ins every few
    minutes empty a battery; beyond an hour between them they hardly count. Longer than { $planned } is not planned
    with, and the interval on the label wins.
