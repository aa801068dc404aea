# The openings that something is for.
places = For { $names }.
places-and-more = For { $names } and { $more } more.

# Devices, and contacts for the loops of transmitters. $places is a sentence as above, $parts what a contact comes with.
set = { $places } Each with { $parts }.
loop-contact = { $contact }, for a transmitter
    .use = { $places } It is for the loop of a transmitter. Each with { $parts }.
loop-contact-any = Wired contact with magnet, class open
    .use =
        { $places } It is for the loop of a transmitter. The questions of the opening decide its class, before it is
        loaded.

resistor = End-of-line resistor, { $value }
    .use = At the far contact of each loop, never in the cabinet.
    .use-layout-unknown =
        At the far contact of each loop, never in the cabinet. How many each loop takes is not known: one is counted.
value-asked = of the value the panel asks
second-value-asked = second of the pair, of the value the panel asks
resistor-transmitter = End-of-line resistor, of the value on the label of the transmitter
    .use = At the far contact of each transmitter's loop, where its label asks for one.

# Parts of a contact, and what they are for by their role.
of-set = { $part }, { $device }
for-cell = One battery for each { $device }, of the type that its label names.
for-screw = For the { $device }, of the length that the ground asks for.
for-pad = For the { $device }, where nothing may be drilled and to hold it while it is tried.
for-joint = To join the leads of each contact to its cable, small enough for its hole or its box.
for-box = Where the tail of the { $device } meets its cable, above wheels and water. Outdoors: one made for it.
for-clamp = To hold the tail of the { $device } on its way to the box.
for-spacer = To lift the magnet of the { $device } into line.
for-sleeve = To keep each half of the { $device } clear of the steel round it.
for-bracket = To bring the magnet of the { $device } over its housing and off the steel.
for-any = One of the parts of the { $device }.
not-in-every-set = { $use } Not supplied with every contact.

# What else the work uses up, and what it takes above a ladder.
joints = Insulated joints
    .use = Between contact and transmitter cable.
joints-in-line = Insulated joints, at the resistor
    .use = One more for each loop: a resistor in line has two ends.
bags = Bag with label
    .use = One bag for each opening.
date-labels = Date label for a battery
    .use = The day it went in, on each battery.
tape = Insulating tape
    .use = Over the ends of each old battery.
cable-labels = Cable label
    .use = The opening, at each end of its cable.
platform = Platform or tower scaffold
    .use = { $places } The work is overhead, and a ladder has nothing to lean on.
access = Tower or a powered platform
    .use = { $places } Too high for a ladder.

# What guards against a hazard, and what reads the radio.
signal-tester = Radio signal tester, or the panel's own test that reads dB
    .use = A required margin in dB is read, not guessed from bars. For the walk test and each proof.
guard-sprung-and-powered-doors = Props, wedges, clamps and barriers
    .use = { $places } So that it can neither drop nor rise, and nobody comes in or falls.
guard-lead-paint = Dust sheet, wet wipes and a bag for chips
    .use = { $places } Old paint counts as lead.
long-bit = Hammer drill and a masonry bit longer than the wall
    .use = { $places } The cable goes through brick or concrete.
guard-glass = Cut-resistant gloves
    .use = { $places } A pane is near.
