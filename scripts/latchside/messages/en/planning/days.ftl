# A day: what it consists of, in a row. `first` is for the start of the sentence.
day = { $work }.
day-over = { $work }. It runs { $over } over, which saves a day.
take-over = Take-over of the system
openings =
    { $count ->
        [one] { $count } opening
       *[other] { $count } openings
    }
proof = proof and handover
    .first = Proof and handover
technicians =
    { $count ->
        [one] one technician
       *[other] { $count } technicians
    }
    .first =
        { $count ->
            [one] One technician
           *[other] { $count } technicians
        }

longer-than-a-day =
    .found = { $takes } at this opening do not fit into a day of { $day }, which leaves { $room } for openings.
    .action = Agree a longer day, send another technician, or agree with the customer who watches it overnight.
