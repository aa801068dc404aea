figures-are = Figures: { $status }.
most-used = Most used for this device
checklists = Checklists
ratings = Ratings
safety = Read before you climb
drawings = Drawings
how-it-works = How it works
suits = Where it suits
avoid = Where it does not
place = Where it goes
parts = Parts of one contact
inputs = Inputs
stages = Every stage of the job
faults = Faults
common-on = Common on: { $openings }.
rating = Rating
figure = Figure
when = When
origin = Where it comes from
not-listed =
    Not listed, because this class has none or nothing is typical of it; where your part has one, its label says it:
    { $values }.
by-mistake = In use by mistake:
power = Power
tamper = Tamper
radio = Radio and check-in
maintenance = Maintenance
disposal = Removal and disposal
no-radio = None: this device has no radio. The loop itself is watched by the panel.
install = Install
install-whole = The whole path, from the van to the handover
no-stage = { $stage }: none
checklist = Checklist
fault = Fault
all-cautions = { $count ->
    [one] The caution for this device
   *[other] All { $count } cautions for this device
}
is = { $senses }, { $reports }, { $mounts }
count = { $count }
figures = { $count ->
    [one] One figure with its condition and source
   *[other] { $count } figures with condition and source
}
openings = { $count ->
    [one] By kind of opening: one place
   *[other] By kind of opening: { $count } places
}
no-radio-short = None
