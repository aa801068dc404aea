yes = yes
no = no
not-known = not known

count-piece = { $count ->
    [one] { $amount } piece
   *[other] { $amount } pieces
}
count-set = { $count ->
    [one] { $amount } set
   *[other] { $amount } sets
}
count-run = { $count ->
    [one] { $amount } run
   *[other] { $amount } runs
}
count-roll = { $count ->
    [one] { $amount } roll
   *[other] { $amount } rolls
}

# What happens when an opening is opened while the system is set, by the response of its zone.
response-delayed = It gives time to { $unset }, and sounds the alarm when that time is over.
response-followed = It waits with the entry door when that opened first, and sounds the alarm at once when it did not.
response-instant = It sounds the alarm at once.
response-always-on = It sounds the alarm at any hour.
other-response = Response: { $response }.
reports = It reports to the { $centre }.

# What is seen when a contact is proved.
landed = on its terminals, pair marked
tamper-seen = tamper shows, and clears
shows-closed = zone closed by itself

# A reading in few words: the same name on the sheet of an opening and on the test sheet.
short-fit-gap = Sensor to magnet, face to face
short-play = Play, pushed and pulled, closed and latched
short-trip = Opening edge when the zone shows open
short-trip-tilted = The same at the top edge, tilted
short-shows-lifted = Zone, door lifted and not yet slid
short-loop-shut = Loop, door closed
short-loop-open = Loop, door open
short-loop-short = Loop, pair shorted
short-loop-cut = Loop, one core lifted
short-cable-ohm = Cable, far ends joined
short-input-shut = Input, door closed
short-input-open = Input, door open
short-radio-margin = Radio margin
short-check-in = Check-in
short-window-at-grade = Supervision window
short-missed-window = Supervision window
short-age-at-setting = Last message at setting
by-own-label = as the label of the contact says: write it down
short-landed = Landed
short-name = Name heard or shown at the panel
short-cover = Cover opened, then closed
short-closed-again = Closed again
