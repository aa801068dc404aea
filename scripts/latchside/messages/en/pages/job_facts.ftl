# Facts of the site.
surveyed = Surveyed
no-date = no date given
planned-for = Planned for
region = Region
built = Built
building = Kind of building
listed = Listed
consent = Consent of the owner
occupied = Occupied during the job
monitored = Monitored
key-arranged = Somebody with a key arranged
grade = Grade
insurer = The insurer asks for
panel-owner = Owner of the panel
installer-code = Installer code known and allowed
wired-positions = Free positions, wired
radio-positions = Free positions, radio
zones-in-use = Zones there already
no-zones-named = none named
library = Library
version = version { $version }

# Facts of an opening.
where = Where
kind = Kind
use = Use
fire-rated = Fire-rated
escape = Escape way
contacts = Contacts
one-zone = One zone for both
powered = Powered
hardware = Hardware
survey-note = Note of the survey
