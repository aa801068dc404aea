title = Set-back of a leaning ladder
wall = Against a wall
landing = Onto a landing
out = out from the wall, m
height = height, m
high = { $height } high
above-landing = { $rise } above the landing
ladder = ladder { $length }
foot = foot { $distance } out
angle = { $angle } to the ground

about = The foot of a ladder stands out a quarter of its working length.
about-wall =
    Against a wall, a ladder of { $length } stands { $out } out, reaches { $height } and leans at { $angle } to the
    ground.
about-landing =
    Onto a landing { $height } high it stands { $out } out and is at least { $length } long, because its stiles rise
    { $rise } above the landing as a handhold.
