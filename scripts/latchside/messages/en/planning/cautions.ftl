# Why a caution applies to the site.
monitored = The site is monitored: it goes on test before the first door or window is opened.
monitored-unknown =
    Whether the site is monitored is not known: it goes on test before the first door or window is opened.
occupied = People live or work there during the job.
occupied-unknown = Whether people live or work there during the job is not known.
dogs = People live or work there: ask about dogs when the visit is agreed.
dogs-unknown = Whether people live or work there is not known: ask about dogs when the visit is agreed.
alone = The job is planned for one technician.
confidential = This pack shows how the site is watched.
magnet-in-every = Every contact of this job has a magnet.
magnet-in-some = Contacts of this job have a magnet.
local-code = Local law and code come before this plan.
unprotected = Openings that are watched today are not while work goes on.

# Why it applies at an opening.
no-year = The year of building is not known.
year = Built in { $year }. Up to { $last } counts as old here.
height-unknown = The height of the work is not known.
high = Work above { $limit }.
overhead = Work overhead, above { $limit }: no leaning ladder.
too-high = Work above { $limit }, and higher than a ladder is used for.
pane = A pane in the door or window.
pane-not-known = Whether it holds a pane is not known, and a hole or a screw goes in.
lithium-cell = A lithium battery goes in.
small-cell = A small battery goes in.
sprung-roller-door = A roller door.
sprung-up-and-over = An overhead door.
sprung-gate = A gate.
sprung-hatch = A lid that may fall shut, and an open hole below it.
sprung-roof-window = A sprung roof window.
sprung-double-hung = Balanced sashes.
sprung-lift-and-slide = A heavy sliding door.
powered = A motor moves it.
drive = A motor moves it: its drive is isolated and locked off first.
drive-and-panel =
    A motor moves it: its drive is isolated and locked off first. Its loop is landed in the panel, which may hold 120 or
    230 V.
drive-possible = It may have a drive on 120 or 230 V.
drive-possible-and-panel = It may have a drive, and its loop is landed in the panel: each may hold 120 or 230 V.
loop-in-panel = Its loop is landed in the panel, which may hold 120 or 230 V.
old-contact = An old contact is in place.
old-switch-possible = An old tilt switch may be in place.
life-safety = Fire-rated, or an escape way.
unknown-both = Whether it is fire-rated or an escape way is not known.
unknown-fire = Whether it is fire-rated is not known.
unknown-escape = Whether it is an escape way is not known.
hollow-frame = Hollow frames hold drain ways, thermal breaks and steel.
glass-edge = A sealed glass edge lies near.
cable-through-walls = Cable is run through walls.
hole = A hole or a screw goes in.

# What to do at an opening, by the caution and its reason. $year is the year of building.
do-life-safety-life-safety = Fix nothing before the written yes of those who answer for its certificate is seen.
do-life-safety-unknown-both = Fix nothing before it is known whether it is fire-rated or an escape way.
do-life-safety-unknown-fire = Fix nothing before it is known whether it is fire-rated.
do-life-safety-unknown-escape = Fix nothing before it is known whether it is an escape way.
do-mains-wiring-drive = Have the drive isolated and locked off, and see that it is dead.
do-mains-wiring-drive-and-panel = Have the drive isolated and locked off, and see that it is dead.
do-mains-wiring-drive-possible-and-panel = Look for a drive. If there is one, have it isolated and locked off.
do-mains-wiring-drive-possible = Look for a drive. If there is one, have it isolated and locked off.
do-asbestos-year = Built { $year }: read the asbestos register before any hole. No register: no hole in board or coating.
do-asbestos-no-year = Year not known: read the asbestos register before any hole. No register: no hole in board or coating.
do-lead-paint-year = Built { $year }: treat the paint as lead. Sheet down, wet wipe, no sanding.
do-lead-paint-no-year = Year not known: treat the paint as lead. Sheet down, wet wipe, no sanding.
do-sprung-and-powered-doors-sprung-double-hung = Prop or clamp the sash before a hand goes under it.
do-sprung-and-powered-doors-sprung-gate = Prop the gate, and stop all traffic through it.
do-sprung-and-powered-doors-sprung-hatch = Barrier the hole before the lid is lifted. Prop the lid, or take it off.
do-sprung-and-powered-doors-sprung-lift-and-slide = Wedge the door before you let go of the handle.
do-sprung-and-powered-doors-sprung-roof-window = Prop the window open or latch it closed before you work at it.
do-sprung-and-powered-doors = Prop or clamp the door so that it can neither drop nor rise, and close off both sides.
do-ladders-overhead = Work from a platform or a tower scaffold, a second person beside it. No leaning ladder.
do-ladders-too-high = Work from a tower or a powered platform, never alone, with people trained on it.
do-ladders-height-unknown = Measure the height first, and choose ladder or platform by it.
do-ladders = Steps or a platform, locked, on firm, level ground, and the door wedged or guarded.
do-mercury-switches = Look for a glass bulb with a bright bead. One is there: stop, leave it, and call the lead.
do-never-drill-here-hollow-frame = Look what lies in the frame first: no hole in a drain way or thermal break.
do-never-drill-here-glass-edge = Measure to the edge of the glass: keep hole and screw clear of it.
do-hidden-services = Run the detector over each place in both directions before a hole.
do-glass = Look for cracks first. Push the frame and never the pane.
do-dust-and-eyes = Eye protection on before the drill starts.
do-swallowed-cells = Count the batteries out and back, and close the cover with its screw or catch.
