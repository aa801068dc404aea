# A day: what it consists of, in a row. `first` is for the start of the sentence.
day = { $work }.
day-over = { $work }. It runs { $over } over, which saves a day.
take-over = Take-over of the system
openings =
    { $count ->
        [one] { $count } opening
       *[other] { $count } openings
    }
of-them =
    { $when ->
        [morning] { $count } of them in the morning only
        [afternoon] { $count } of them in the afternoon only
       *[closed] { $count } of them after closing only
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

# Where one technician does what takes two.
one-more = somebody at the panel who calls out what it shows, agreed before the day

longer-than-a-day =
    .found = { $takes } at this opening do not fit into a day of { $day }, which leaves { $room } for openings.
    .action = Agree a longer day, send another technician, or agree with the customer who watches it overnight.
