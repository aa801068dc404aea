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
clips = Metal cable clips or ties
    .use = Where the run is on the surface. Plastic ones drop the cable in a fire.
sealing = Sealing material
    .use = For each wall crossed, of the kind it asks.
trunking = Stuck trunking, for frames
    .use = The last stretch, on a frame where nothing is drilled. Along the wall metal clips hold the run.
