invented = Invented site.
invented-why = Nobody lives or works here; the pack shows what one holds.
glance = The job at a glance
openings-of-job = Openings
openings-of-day = Openings: { $openings }.
opening = Opening
device = Device
worst = Worst
open = Open
by-lead = chosen by the lead
work = Work
in-all = { $time }, in technician-hours; { $site } on site
in-all-by = { $technicians ->
    [one] { $time }, in technician-hours, for { $technicians } technician; { $site } on site
   *[other] { $time }, in technician-hours, for { $technicians } technicians; { $site } on site
}
survey-note = Note of the survey
problems = Settle first
questions = Open questions
questions-why = Ask or look before the day. What each answer decides stands in the { $annex }.
annex = annex
no-questions = None: the survey says all that the plan needs.
cautions = Cautions of this job
site = The site
no-cautions = None named by the survey. The cautions of each procedure stand before its steps.
zone = Zone
time = Time
zones = Zone schedule
position = Position
device-input = Device, input
keypad = Name, spoken and on the keypad: { $limit }
on-keypad = Name, spoken and on the keypad
too-long = too long: { $letters } letters
supervision-of = Supervision, { $positions }
response = Response
reports = Reports
chime = Chime
people-in = Live with people in
agree =
    Agree with the customer before the zones are entered: which stay live in { $part_set } (tick them), the times, and
    who sets what.
at-the-panel = At the panel
panel-number = no.
live = live
told-time = { $time }:
stays-live = Live in { $part_set }:
agreed-time = { $time } ({ $held }):
areas = One system, or areas:
outer = { $positions }, gate or garage: alarm at once, entry delay, or chime only:
tamper-of = { $position }, tamper
no-own-name = { $name }, no name of its own
yes = yes
no = no
positions = Positions for cable and for radio count apart: W and R.
none-free = none free
tamper-lines = A tamper line is the second meaning of the position above it: it takes no position and no name.
entered = How a zone is entered: { $procedure }.
no-zones = No zone yet: no opening has a device.
loaded = Loaded
what = What
needed = Needed
spare = Spare
for = For
goes-to = Goes to
nothing-to-load = Nothing to load: no opening has a device.
before-van-leaves = Before the van leaves, go through this list: { $checklist }.
work-in-all =
    { $time } in technician-hours. The times come from: { $table }. They grow most with a way for cable that is not as
    surveyed, a hole in steel or stone, a second place tried for the radio, and a centre that keeps you waiting. One
    opening is closed up before the next is begun; a second technician works at another beside it. Loops to the panel
    are metered and made safe at once, and landed together, once a day.
day = Day { $number }
visits = Visits
fill-in =
    Fill it in on paper, or bring the visit file in under { $visits }: the phone then judges each reading against these
    values.
contents = Contents
with-annex = Print the annex for the lead too
date-line = Date:
technician-line = Technician:
meter-line = Meter:
service-line = Call for service:
centre-line = Number of the { $centre }:
fitted-line = Fitted (day):
counts-from = Worked out for { $day }. Each day counts from the day that the system was fitted.
test-sheet-of = Test sheet, { $contacts }
contact = Contact
seen = seen
at-panel = At the panel, { $reading }: { $expected }
proved = How each opening is proved: { $procedure }, { $checklist }.
handover = This sheet stays with the customer. Go through it with them, and let them try each door once.
fitted = What was fitted
when-set = What happens when it opens while the system is { $set }
shown-as = { $contact }, shown as { $zone }
when-opens = When it opens
not-watched = Not watched yet:
unnoticed = { $openings }. Anyone can come in there unnoticed.
daily = Every day
shut-first = Close and latch every door and window before you { $set } the system. One that is open is named.
entries =
    Come in and go out by: { $names }. These give you time to { $set } and { $unset }. Agree with the technician how long, and try
    it together.
chimes = While the system is { $unset }, it chimes when one of these opens: { $names }.
codes = Each person has a code of their own. Tell it to nobody, and write it nowhere, not on this sheet either.
leave-halves =
    Leave both halves of each contact as they are: do not paint over them, move them or hang a magnet beside them.
leave-contact = Leave each contact as it is: do not paint over it or move it.
call-before = Call before you change a door, a window, a lock or a seal that has a contact.
sags = A door that sags or a window that swells is repaired first. The contact is looked at after that.
low-cell =
    Contacts without a cable run on a battery. When the system shows a low battery, call for service. The opening is
    watched until the battery is empty, and not after.
shielded = Tell the technician before foil, a mirror or a metal door is put up between a contact and the panel.
shows-open =
    A zone shows open and its door or window is closed: close it again and push the latch home. If it stays, call for
    service.
trouble = The system shows trouble, tamper or a device not heard: call for service. Leave the covers of panel and contacts closed.
false-alarm = A false alarm: { $unset } the system, and answer when the { $centre } calls.
nothing-due = Nothing falls due: no opening has a device.
leave = What to leave alone
wrong = When something is wrong
back = When we come back
service = Service plan
due = Due
done = Done
date = date
service-how = How a service is done: { $procedure }, { $checklist }, { $cell }.
sign-customer = Explained to me, the customer (name, date, signature):
sign-technician = Explained by (name, date, signature):
