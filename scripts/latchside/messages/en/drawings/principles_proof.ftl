title = The two ends of the proof
about =
    Seen from above. End one: the door is closed and latched, and is pushed and pulled through all its play; no trip.
    End two: the door is opened slowly, and the contact trips inside the limit for the leading edge; the opening at the
    trip is shorter than the limit. The play and the opening at the trip are written down.
end-one = End one: closed and latched
end-two = End two: open slowly
play = play
push = push
pull = pull
sensor = sensor
magnet = magnet
# Two lines of one label.
opening = opening
    .at-trip = at the trip
slowly = slowly
limit = limit
no-trip = Through all the play: no trip.
trips-inside = Trips inside its limit.
write-down = Write both distances down.
