all-visits = All visits
take = Take it with you
this-visit = This visit
no-visit = No visit
only-here = { $site }: { $entries ->
        [one] 1 entry
       *[other] { $entries } entries
    } only on this device
in-file = { $site }: saved as a file
problems = Problems
readings = Readings
notes = Notes
note-about = A note about this visit
save-note = Save the note
noted = Noted.
print = Print the sheet

# A visit that is locked, or not here.
missing = This visit is not on this device. Bring it in from its file.
locked = Locked visit of { $date }
passphrase = Passphrase
unlock = Unlock
wrong-passphrase = That is not its passphrase.
wipe-locked = Wipe the locked visit
wipe-locked-asked = It goes from this device for good. The file you saved is all that stays.

# What the visit is called.
lists-only = Lists run without a visit
archived = Archived: nothing more is written to it.
change-visit = Change name, date or who
site-name = A name for the site
date = Date
who = Who
save = Save
changed = Changed.

# Openings.
openings = Openings
add-opening = Another opening: place, side, opening
add = Add it
added = Added.
no-device = Device not chosen
take-off = Take off the list
take-off-asked = { $opening } goes from the list. What was recorded at it stays in the record.
take-off-sure = Take it off
taken-off = Taken off.

# How it leaves the device.
put-away = Put it away
save-first = It can be locked away or wiped once all of it is saved as a file.
open-again = Open it again
opened-again = Open again.
archive = Archive it
archive-asked =
    { $unsaved ->
        [0] It leaves the open visits and stays on this device.
        [one] It leaves the open visits and stays on this device. 1 entry is in no file yet.
       *[other] It leaves the open visits and stays on this device. { $unsaved } entries are in no file yet.
    }
archived-now = Archived.
lock-why = Locked away, it can be read only with a passphrase of your own. Nobody can bring it back without.
new-passphrase = A passphrase
lock = Lock it away
wipe = Wipe it from this device
wipe-asked =
    { $entries ->
        [one] 1 entry goes from this device for good. The file you saved is all that stays.
       *[other] { $entries } entries go from this device for good. The file you saved is all that stays.
    }
wipe-sure = Wipe it
changed-meanwhile = Something was recorded meanwhile. Save the file again first.
