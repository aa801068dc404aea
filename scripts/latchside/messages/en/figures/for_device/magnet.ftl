reach-title = Make distance, and what steel takes
place = Where it sits
height = Height of both axes above the steel
closes = Closes at
opened = Has opened at
share = Of the make distance in air

no-steel = no steel
in-air = In air
flush = Flush on steel
held-off = Both halves held { $distance } off by bracket or packing
one-spacer = One spacer of { $size } under both halves
two-spacers = Two spacers under both halves
touching = Both barrels against steel at one side
beside-further = Steel alongside, further off
beside-clear = Steel alongside, well clear

steel-takes-distance =
    Steel close by leaves { $left } of the make distance, and distance wins it back up to { $best }. The gap to fit to
    is at most half of what is left: [[procedure/try-gap]].
steel-takes-spacer =
    Steel close by leaves { $left } of the make distance, and a spacer under both halves wins it back up to { $best }.
    The gap to fit to is at most half of what is left: [[procedure/try-gap]].
steel-takes-bracket =
    Steel close by leaves { $left } of the make distance, and a bracket that holds both halves off wins it back up
    to { $best }. The gap to fit to is at most half of what is left: [[procedure/try-gap]].

from-label = The field at which the reed closes, and that at which it lets go, are worked back from the label.
lie-end-on = Magnet and reed lie on one line, end to end, and the steel is an endless plate: the worst case.
lie-parallel =
    Magnet and reed lie side by side, the magnet at the mark, and the steel is an endless plate: the worst case.
sure =
    Off steel, at the low end of the tolerance and warm, it is sure to close at { $closes } and to stay closed up to
    { $holds }. Gap, play and sag stay below the first with a margin, gap and play below the second.
label-wins = The label's own make distance on steel, { $reach }, wins.
barrel-label-wins =
    Steel all round a barrel takes more than steel at one side. The label's own make distance on steel, { $reach },
    wins.

spacer-title = Spacer to choose
step = Step between the surfaces
without = Without a spacer
to-use = Spacer to use
with = With it
level = Surfaces level
proud = Sensor { $step } proud
deeper = Sensor { $step } deeper
in-line = in line
magnet-low = magnet { $offset } too low
sensor-low = sensor { $offset } too low
no-spacer = no spacer
under-magnet = { $count ->
    [one] one spacer of { $size } under the magnet
   *[other] two spacers of { $size } under the magnet
}
under-sensor = { $count ->
    [one] one spacer of { $size } under the sensor
   *[other] two spacers of { $size } under the sensor
}
between-level =
    Between level surfaces it takes { $spacers }. At any step, what counts is that the two tops end up level.
equally-deep = Reed and magnet lie equally deep below the tops of their bodies.
at-hand = Two spacers of { $size } are at hand.
