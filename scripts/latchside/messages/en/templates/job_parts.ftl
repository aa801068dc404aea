invented = Invented site.
invented-why = Nobody lives or works here; the pack shows what one holds.
cautions-here = Cautions
glance = The job at a glance
openings-of-job = The openings of the job
opening = Opening
device = Device
worst = Worst
open = Open
by-lead = chosen by the lead
work = Work
in-all = { $time } in all
in-all-by = { $technicians ->
    [one] { $time } in all, { $technicians } technician
   *[other] { $time } in all, { $technicians } technicians
}
survey-note = Note of the survey
site-figures = Figures of the site
problems = What stands against the plan
questions = Open questions
questions-why = The survey does not say these. Ask or look before the day; nothing here was guessed.
no-questions = None: the survey says all that the plan needs.
cautions = Cautions of this job
site = The site
no-cautions = None named by the survey. The cautions of each procedure stand before its steps.
figure = Figure
worked-out = Worked out
verdict = Verdict
meaning = What it means
assumed = Assumed: { $what }
against = Stands against it:
ask-first = Ask or look first.
decides = What each answer decides stands under { $questions }.
input-in-use = input in use: { $input }
lead-chose = Chosen by the lead
why = Why
speaks-against = What speaks against it
zone = Zone
others = Why not the others
never = never here
fixing = Where and how it is fixed
sensor = Sensor
magnet = Magnet
spacer = Spacer
height = Height
held-by = Held by
figures = Figures
figures-of = Figures of { $opening }
expected-readings = Expected readings
expected-of = Expected readings of { $opening }
reading = Reading
expected = Expected
how = How it is done: { $procedures }.
good = good
sheets =
    One sheet an opening, in the order of the walk. A verdict of { $good } holds for what the survey says and is still
    tried in place. In print, the expected readings stand on the test sheet alone.
kinds = The kinds of opening, drawn
zones = Zone schedule
position = Position
name = Name as spoken
device-input = Device, input
response = Response
reports = Reports
chime = Chime
supervision = Supervision
tamper-of = { $position }, tamper
no-own-name = { $name }, no name of its own
yes = yes
no = no
positions = Positions for cable and for radio count apart: W and R.
tamper-lines = A tamper line is the second meaning of the position above it: it takes no position and no name.
entered = How a zone is entered: { $procedure }.
no-zones = No zone yet: no opening has a device.
loaded = Loaded
what = What
needed = Needed
spare = Spare
for = For
nothing-to-load = Nothing to load: no opening has a device.
before-van-leaves = Run { $checklist } before the van leaves.
work-in-all =
    { $time } of work in all, by { $table }. One opening is closed up before the next is begun; a second technician
    works at another beside it. Loops to the panel are landed together, once a day.
day = Day { $number }
visits = Visits
fill-in =
    Fill it in on paper, or bring the visit file in under { $visits }: the phone then judges each reading against these
    values.
date-line = Date:
technician-line = Technician:
meter-line = Meter:
service-line = Call for service:
centre-line = Alarm receiving centre:
explained-line = Explained to:
by-line = By:
shares-zone =
    It shares a zone, which shows as { $zone }. It is read and proved by itself, with the other contact closed.
test-sheet-of = Test sheet of { $contact }
read = Read
inside = Inside
figure-unit = figure
seen = seen
proved = How each opening is proved: { $procedure }, { $checklist }.
handover = This sheet stays with the customer. Go through it with them, and let them try each door once.
fitted = What was fitted
when-set = What happens when it opens while the system is set
shown-as = { $contact }, shown as { $zone }
when-opens = When it opens
not-watched = Not watched yet:
unnoticed = { $openings }. Anyone can come in there unnoticed.
daily = Every day
shut-first = Close and latch every door and window before you set the system. One that is open is named.
entries =
    Come in and go out by: { $names }. These give you time to set and unset. Agree with the technician how long, and try
    it together.
chimes = While the system is unset, it chimes when one of these opens: { $names }.
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
trouble = The system shows trouble, tamper or a device not heard: call for service, and do not open anything.
false-alarm = A false alarm: unset the system, and answer when the alarm receiving centre calls.
nothing-due = Nothing falls due: no opening has a device.
leave = What to leave alone
wrong = When something is wrong
back = When we come back
service = Service plan
due = Due
where = Where
done = Done
date = date
service-how = How a service is done: { $procedure }, { $checklist }, { $cell }.
summary = Summary
sign-customer = Explained to me, the customer (name, date, signature):
sign-technician = Explained by (name, date, signature):
