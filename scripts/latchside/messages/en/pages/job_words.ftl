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
count-roll = { $count ->
    [one] { $amount } roll
   *[other] { $amount } rolls
}
between = { $usual } (from { $low } to { $high })

# What happens when an opening is opened while the system is set, by the response of its zone.
response-delayed = It gives time to unset, and sounds the alarm when that time is over.
response-followed = It waits with the entry door when that opened first, and sounds the alarm at once when it did not.
response-instant = It sounds the alarm at once.
response-always-on = It sounds the alarm at once, set or not.
other-response = Response: { $response }.
reports = It reports to the alarm receiving centre.

# What is written when a contact is proved.
proof-play = Play, closed and latched, without a trip
proof-trip = Opening at the edge when the zone shows open
name-shown = Name heard or shown at the panel
shut-again = Door or window closed again
shows-closed = the zone shows closed with no further action
