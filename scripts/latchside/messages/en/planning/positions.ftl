# Why the free positions of the panel changed a choice. $free positions for $used zones.
share-loop =
    The panel has { $free ->
        [one] { $free } wired position
       *[other] { $free } wired positions
    } for { $used ->
        [one] { $used } wired zone
       *[other] { $used } wired zones
    } of this job: its two contacts share one loop and one name.
to-radio =
    The panel has { $free ->
        [one] { $free } wired position
       *[other] { $free } wired positions
    } for { $used ->
        [one] { $used } wired zone
       *[other] { $used } wired zones
    } of this job. Radio reaches the panel from here.
to-cable =
    The panel has { $free ->
        [one] { $free } radio position
       *[other] { $free } radio positions
    } for { $used ->
        [one] { $used } radio zone
       *[other] { $used } radio zones
    } of this job. A cable ends here.
to-measured-run =
    The panel has { $free ->
        [one] { $free } radio position
       *[other] { $free } radio positions
    } for { $used ->
        [one] { $used } radio zone
       *[other] { $used } radio zones
    } of this job. The run of a cable was measured here.
share-transmitter =
    The panel has { $free ->
        [one] { $free } radio position
       *[other] { $free } radio positions
    } for { $used ->
        [one] { $used } radio zone
       *[other] { $used } radio zones
    } of this job: its two contacts share one transmitter and one name.

# $link is wired or radio.
too-few-positions =
    { $link ->
        [radio]
            { $used ->
                [one] { $used } radio zone
               *[other] { $used } radio zones
            } for { $free ->
                [one] { $free } radio position
               *[other] { $free } radio positions
            }. Without one: { $openings }.
       *[wired]
            { $used ->
                [one] { $used } wired zone
               *[other] { $used } wired zones
            } for { $free ->
                [one] { $free } wired position
               *[other] { $free } wired positions
            }. Without one: { $openings }.
    }
no-position =
    { $link ->
        [radio]
            No free radio position: { $free ->
                [0] the panel has none.
                [one] the panel has { $free } radio position, and another opening takes it.
               *[other] the panel has { $free } radio positions, and other openings take them.
            }
       *[wired]
            No free wired position: { $free ->
                [0] the panel has none.
                [one] the panel has { $free } wired position, and another opening takes it.
               *[other] the panel has { $free } wired positions, and other openings take them.
            }
    }

# What gives the openings left over a position. $receiver is first, or another where the panel has one.
order-expander =
    Cheapest: order an expander with at least { $lacking ->
        [one] { $lacking } more wired input
       *[other] { $lacking } more wired inputs
    }. Or leave openings out, with the customer's written yes to which.
order-receiver =
    Cheapest: order { $receiver ->
        [another] another receiver, or an expander for radio,
       *[first] a receiver
    } with at least { $lacking ->
        [one] { $lacking } more radio position
       *[other] { $lacking } more radio positions
    }. A wired input hears no radio. Or leave openings out, with the customer's written yes to which.
measure-or-order-receiver =
    Cheapest: measure the run of a cable, because wired positions are free. Else order { $receiver ->
        [another] another receiver, or an expander for radio,
       *[first] a receiver
    } with at least { $lacking ->
        [one] { $lacking } more radio position
       *[other] { $lacking } more radio positions
    }. A wired input hears no radio. Or leave openings out, with the customer's written yes to which.
