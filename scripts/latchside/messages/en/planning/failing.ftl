fails = { $figure }: { $shown }. { $meaning }
at-several = { $found } It is the same at { $openings }.

# Check-ins too seldom for the likeliest grade; $shown is how often, and how often that grade asks.
grade-not-known =
    .found =
        { $count ->
            [one] The grade is not known, and at the likeliest one the check-ins of { $count } radio opening are too
                seldom: { $shown }. It is { $openings }.
           *[other] The grade is not known, and at the likeliest one the check-ins of { $count } radio openings are
                too seldom: { $shown }. They are { $openings }.
        }
    .action = Ask customer, insurer and centre for the grade before anything is ordered. At that grade: { $then }

# What to order or change where a figure does not say so itself, by the id of the figure.
change-any = Choose another part or another place for it, or have the cause changed before the day.
change-reed-gap =
    Order a contact whose label is sure of this, or have hinge or latch adjusted first and measure again.
change-spacer = Order spacers or a bracket for this step, or choose another place or another contact.
change-radio-margin =
    Run a cable, or order a repeater or a receiver nearer to it, or a device of the frequency that the receiver takes.
change-cable-resistance = Order a thicker cable, or choose an input nearer to it, or a transmitter at the opening.
change-loop-states = Choose resistors, layout or input so that the panel tells open from closed, by its instructions.
change-cell-life = Choose a wired contact, or order a device with a larger battery for so many openings a day.
change-missed-check-in = Choose a device that checks in more often, or a wired contact.
change-standby-battery = Order a supply of its own with its own battery, or take load off the panel.
change-ladder = Order access equipment for this height, with people trained on it.
