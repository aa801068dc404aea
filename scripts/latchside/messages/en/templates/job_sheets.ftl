sheets = One sheet an opening, in the order of the walk. First what is the same for all of them.
walk = The walk
walk-why =
    Each side with its openings in the order of the walk: number, zone, device. Not to scale.

# What holds at every opening.
every-opening = The same for every opening
every-compare =
    Compare the opening with its sheet before you touch it. Kind, material, gap or hardware not as written: stop, and
    call the lead.
every-order =
    Finish and close up one opening before you begin the next. A loop to the panel is metered and its end made safe;
    it is proved after landing.
every-drawing = The drawing shows the kind of opening. Where text and drawing differ, the text holds.
every-gap = Read the gap closed and latched, before the door or window is pushed. Its play comes on top.
every-write = Write what the meter shows, with its unit. Tick the box when it is within the limits.
every-outside =
    A reading outside: find the cause, put it right, measure again. Still outside: stop, make the opening safe, and call
    the lead. Never widen a limit.
every-ends =
    Prove both ends. Closed and latched, pushed and pulled through all its play: no trip. Opened slowly: it trips inside
    the limit.
every-close = After the proof: closed, latched, and the panel shows the zone closed.

# What holds at every opening of one class.
every-device = The same for every { $device }: { $openings }
several = The same for several classes
at = { $openings }:
named = { $name }:
shown = { $figure }.

# The sheet of an opening.
sheet = { $number } · { $opening }
input-in-use = input: { $input }
takes = · { $time }
bites = What bites here
told-before = Cautions here, told before the sheets:
listed = Listed building: written consent of the authority seen? No: no hole, no screw and no pad.
against = Settle before you begin:
ask-first = Ask or look first:
lead-chose = Chosen by the lead
sensor = Sensor
magnet = Magnet
spacer = Spacer
height = Height
hold-and-hole = Fixing
cable = Cable
resistor = Resistor
zone = Zone
zone-line = { $position }, { $name }: { $response }
try = Try in place:
stop = Stop and call the lead when
stop-differs = the opening is not as this sheet says
stop-unanswered = the opening is not as this sheet says, or a question above has no answer
stop-outside = a reading stays outside
readings-of = Readings of { $opening }
reading = Reading
expected = Expected
read = Read, within limits
seen = seen
same-for = Read first: { $part }.
same-part = the same for every { $device }
why-here = Why
notes = Notes
