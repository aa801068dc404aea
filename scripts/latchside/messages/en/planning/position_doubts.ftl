# $kind is the word of the survey for the kind of opening, $link is wired or radio.
no-room-for-second =
    .found =
        { $kind ->
            [double-hung] The upper sash may open too
            [hatch] The lid may lift out, and then takes a second contact
           *[other] The second leaf may open too
        }, and then its zone has no { $link ->
            [radio] radio
           *[wired] wired
        } position: all are taken.
    .action = Look at it before anything is ordered. If it opens, order more positions, or leave out another by name.

# $openings are not heard by radio; $first are those with the shortest way for a cable.
wired-position-free =
    .found =
        { $free ->
            [one] By the figures radio does not reach { $openings }, and { $free } wired position is free.
           *[other] By the figures radio does not reach { $openings }, and { $free } wired positions are free.
        }
    .action =
        { $more ->
            [yes] Walk-test them first. Else run a cable to { $first }, the shortest way; the others need a repeater.
           *[no] Walk-test first. Else run a cable to { $first }, or order a repeater.
        }
