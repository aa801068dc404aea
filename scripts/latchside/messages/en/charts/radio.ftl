loss-title = Radio loss with distance
panel-walls = Free air and brick walls
panel-floors = In a home, floor by floor
distance = distance, m
loss = loss, dB
key-walls = { $count ->
    [0] no wall
    [one] { $count } wall
   *[other] { $count } walls
}
key-floors = { $count ->
    [0] no floor
    [one] { $count } floor
   *[other] { $count } floors
}
loss-at = { $loss } at { $distance }
loss-about =
    At { $frequency }. In free air a path loses { $free }, and each dry brick wall of { $thickness } adds { $wall },
    drawn out beyond the table of the standard. In a home, where walls and furniture are in the slope, it loses
    { $home }, and each floor adds { $floor }. One house differs from the next by ten decibels either way.

missed-title = Chance of a missed window
lost = check-ins that are lost, %
chance = chance that a window is missed
chance-certain = certain
chance-hundred = 1 in 100
chance-ten-thousand = 1 in 10,000
chance-million = 1 in a million
key-window = { $tries ->
    [one] { $window }: { $tries } check-in
   *[other] { $window }: { $tries } check-ins
}
once-in = { $number } with a window of { $window }
missed-about =
    With a check-in every { $interval }. Where half of the check-ins are lost, all of a window are missed once in
    { $half }. Every further check-in within the window makes that rarer, so a path that loses few hardly ever shows
    false trouble. Losses that come together are not in this.
