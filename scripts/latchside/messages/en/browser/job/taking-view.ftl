title = The survey of this visit
survey = survey
from = This visit was started from a { $survey } on this device.
take = Take this into the survey
look = Nothing is changed yet. Keep the tick at what the survey shall say from now on.
take-kept =
    { $changes ->
        [0] Nothing to change
        [one] Make 1 change
       *[other] Make { $changes } changes
    }
leave = Change nothing
same = The survey says the same as this visit. Nothing is left to take over.
at = { $opening }: { $what }
device = device
gap = gap when closed
contact = sound contact in place
defect = note of a defect
before = Survey: { $before }
after = Visit: { $after }
none = nothing
yes = yes
no = no
