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
local-code = Local code and licence come before this plan.
unprotected = Openings that are watched today are not while work goes on.

# Why it applies at an opening.
no-year = The year of building is not known.
year = Built in { $year }. Up to { $last } counts as old here.
height-unknown = The height of the work is not known.
high = Work above { $limit }.
pane = A pane in the door or window.
lithium-cell = A lithium battery goes in.
small-cell = A small battery goes in.
sprung-roller-door = A roller door.
sprung-up-and-over = An up-and-over door.
sprung-gate = A gate.
sprung-roof-window = A sprung roof window.
sprung-double-hung = Balanced sashes.
sprung-lift-and-slide = A heavy sliding door.
powered = A motor moves it.
drive = A motor moves it: its drive is isolated and locked off first.
drive-possible = It may have a drive on mains.
loop-in-panel = Its loop is landed in the panel, which may hold mains.
old-contact = An old contact is in place.
old-switch-possible = An old tilt switch may be in place.
life-safety = Fire-rated, or an escape way.
life-safety-unknown = Whether it is fire-rated or an escape way is not known.
hollow-frame = Hollow frames hold drain ways, thermal breaks and steel.
glass-edge = A sealed glass edge lies near.
cable-through-walls = Cable is run through walls.
hole = A hole or a screw goes in.
