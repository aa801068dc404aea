# Zones and free positions of the panel.
too-few-wired =
    .found =
        { $zones ->
            [one] { $zones } wired zone
           *[other] { $zones } wired zones
        } for { $free ->
            [one] { $free } wired position
           *[other] { $free } wired positions
        }.
    .action = Add an expander, or choose by hand which openings go without a zone of their own.
too-few-radio =
    .found =
        { $zones ->
            [one] { $zones } radio zone
           *[other] { $zones } radio zones
        } for { $free ->
            [one] { $free } radio position
           *[other] { $free } radio positions
        }.
    .action = Add a receiver, or choose by hand which openings go without a zone of their own.
radio-on-wired-position =
    .found =
        { $zones ->
            [one] { $zones } radio device
           *[other] { $zones } radio devices
        }, and no position that takes one: only wired positions are free.
    .action = Add a receiver, or run cable to those openings. A wired position never hears a radio device.

# $others says whether openings are on the way from an entry door.
no-entry-route =
    .found =
        { $others ->
            [yes] No opening is marked as the entry door, yet some are on the way from one.
           *[no] No opening is marked as the entry door.
        }
    .action = Ask by which door people come in. Without a delayed zone they set off the alarm.
entry-route-without-delayed-zone =
    .found = { $openings }: marked as entry door, and without a zone.
    .action = Choose a device for the entry door by hand, or ask for another entry door.

# Names of zones. $other is a zone in use or one of the job.
double-name =
    .found = “{ $name }” is also the name of { $other }.
    .action = Write a name of its own under `spoken` in the survey.
names-sound-alike =
    .found = “{ $name }” sounds like the name of { $other }.
    .action = Write a name of its own under `spoken` in the survey.
zone-in-use = the zone { $name }, which is in use
zone-of-job = { $position }, { $name }
name-too-long =
    .found =
        { $letters ->
            [one] “{ $name }” has { $letters } letter. The keypad shows { $limit }.
           *[other] “{ $name }” has { $letters } letters. The keypad shows { $limit }.
        }
    .action = Write a name of its own under `spoken` in the survey.
    .shorter = Write a name of its own under `spoken` in the survey. “{ $shorter }” fits.
name-not-sayable =
    .found = “{ $name }” cannot be said aloud: { $words }.
    .action = Write a name of its own under `spoken` in the survey.
names-by-number =
    .found = { $count } openings would be “{ $name }”. They are numbered in the order of the walk.
    .action = Write what people on site would point to, such as left or right, under `spoken` in the survey.
