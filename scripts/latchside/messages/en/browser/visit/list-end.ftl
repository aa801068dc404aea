# The last line.
complete = Complete
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
        [one] Closed while 1 item is open.
       *[other] Closed while { $open } items are open.
    }

# Paper, and starting anew.
print = Print this list
print-which = Choose the device first: the paper then holds its items alone.
print-all = Print the items of every device
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
