title = { $device }: Install
description = The whole installation of a { $device }, stage by stage, with the figure to hit at each.
devices = Devices
summary =
    { $stages ->
        [one] One stage,
       *[other] { $stages } stages,
    } each with its minutes and the figure to hit.
read-first = Read the cautions first.
minutes = { $minutes } min
by-layout = (by layout)
label-wins = Minutes are common practice. Figures are typical for this class of part. The label on your part wins.
safety = Read before you climb
origin = Where this comes from
versions = Version { $version }
record = Device record { $file }, version { $version }.
edit = Edit this record
