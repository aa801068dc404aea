this-checklist = This checklist
next-left = Next open item ({ $open } left)
last-line = To the last line
undo = Undo
writes-to = Writes to: { $visit }
writes-to-opening = Writes to: { $visit }, { $opening }

choose =
    { $wanted ->
        [opening] Choose the opening
        [device] Choose the device
       *[visit] Choose where it writes to
    }

# What became of a list that has changed.
version-now = as now
changed =
    { $kept ->
        [one] This list has changed since it was filled in (version { $then }, now { $now }). 1 outcome is kept.
       *[other]
            This list has changed since it was filled in (version { $then }, now { $now }). { $kept } outcomes are kept.
    }
reworded =
    { $items ->
        [one] 1 item reads otherwise now and is open again.
       *[other] { $items } items read otherwise now and are open again.
    }
gone = No longer on the list, still in the record: { $items }.

# Completion, undo, and starting anew.
said-complete = Complete.
started-anew = Started anew. Undo brings everything back.
taken-back = Taken back: { $words }.
completion = completion
what-was-taken-back = what was taken back
