fails = { $figure }: { $shown }. { $meaning }
at-several = { $found } It is the same at { $openings }.

# What to order or change where a figure does not say so itself, by the id of the figure.
change-any = Choose another part or another place for it, or have the cause changed before the day.
change-reed-gap =
    Order a contact whose label is sure of this, or have hinge, latch or keep adjusted first and measure again.
change-spacer = Order spacers or a bracket for this step, or choose another place or another contact.
change-radio-margin =
    Run a cable, or order a repeater or a receiver nearer to it, or a device of the frequency that the receiver takes.
change-cable-resistance = Order a thicker cable, or choose an input nearer to it, or a transmitter at the opening.
change-loop-states = Choose resistors, layout or input so that the panel tells open from closed, by its instructions.
change-cell-life = Choose a wired contact, or order a device with a larger battery for so many openings a day.
change-missed-check-in = Choose a device that checks in more often, or a wired contact.
change-standby-battery = Order a supply of its own with its own battery, or take load off the panel.
change-ladder = Order access equipment for this height, with people trained on it.
