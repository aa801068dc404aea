title = Find the fault
description =
    Every fault by what is seen, in the words of those who report it; causes by device; the checks that settle most.
faults = Faults
pick = Pick what you see, then the words that come nearest. The page of the fault leads on, one check at a time.
quoted = “{ $words }”
settle = Ten checks that settle most faults
settle-how =
    Worked out from the plans: the checks after which most often one cause is left, over all faults, each counted once.
in-faults = In: { $faults }.
causes = Causes by device
causes-how =
    How often a cause is behind its fault on each device: a common-practice estimate. A dash says that it does not occur
    there. Devices with the same causes share a column.
fault-and-cause = Fault and cause
