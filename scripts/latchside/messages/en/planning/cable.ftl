cable = Alarm cable, { $size }
cable-cores = Alarm cable, { $cores }, { $size }
cable-usual = Alarm cable, of the size and cores that are usual there
runs =
    { $count ->
        [one] { $count } run, with spare for routing and ends.
       *[other] { $count } runs, with spare for routing and ends.
    }
unmeasured = Alarm cable, length not known
    .use = Runs that nobody measured. Their metres are not in this list.
clips = Cable clips or ties
    .use = Where the run is on the surface.
sealing = Sealing material
    .use = For each wall crossed, of the kind it asks.
