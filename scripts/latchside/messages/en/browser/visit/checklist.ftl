this-checklist = This checklist
complete = Complete
next-left = Next open item ({ $open } left)
last-line = To the last line
undo = Undo
writes-to = Writes to: { $visit }
writes-to-opening = Writes to: { $visit }, { $opening }

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

# The last line.
completed = Complete, { $at }.
completed-by = Complete, { $at }, { $by }.
with-problems =
    { $problems ->
        [one] With 1 problem.
       *[other] With { $problems } problems.
    }
complete-with =
    { $problems ->
        [0] Complete
        [one] Complete, with 1 problem
       *[other] Complete, with { $problems } problems
    }
closed =
    { $open ->
        [one] Closed while 1 item is open:
       *[other] Closed while { $open } items are open:
    }
said-complete = Complete.

# Undo, and starting anew.
anew = Start this list anew
anew-asked =
    { $entries ->
        [one] This takes back 1 entry of this list. Undo brings them back.
       *[other] This takes back { $entries } entries of this list. Undo brings them back.
    }
anew-asked-opening =
    { $entries ->
        [one] This takes back 1 entry of this list for { $opening }. Undo brings them back.
       *[other] This takes back { $entries } entries of this list for { $opening }. Undo brings them back.
    }
anew-sure = Take them all back
started-anew = Started anew. Undo brings everything back.
taken-back = Taken back: { $words }.
completion = completion
what-was-taken-back = what was taken back
