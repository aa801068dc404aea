plan = The plan so far
offer = Work out the plan
offered = Which device goes on which opening, what it still needs to know, and what stands against it. { $size ->
    [unknown] The planner is brought once;
   *[other] The planner, { $size }, is brought once;
    } after that it needs no signal. Nothing leaves this device.
starting = The planner is being brought and made ready: a minute or two the first time. The form goes on working.
planning = Working it out …
again = Try again

# Why there is no plan.
refused = This browser does not run the planner, or it could not be brought. The form works as before: save the file, and have the plan made on a computer.
no-signal = No signal, and the planner is not on this device yet. The form works as before: ask for the plan again where there is signal.
slow = The plan took too long on this device. The form works as before: save the file, and have the plan made on a computer.
failed = The planner met what it did not expect, and your survey is untouched: { $told }

nothing-yet = No opening says enough to be planned yet.
waiting =
    { $openings ->
        [one] 1 opening is not planned yet: an answer that it needs is missing, and is marked there.
       *[other] { $openings } openings are not planned yet: answers that they need are missing, and are marked there.
    }
unread = { $where }: { $found }
counts =
    { $openings ->
        [one] 1 opening
       *[other] { $openings } openings
    }, { $devices } with a device, { $zones ->
        [one] 1 zone
       *[other] { $zones } zones
    }
time = About { $hours } h on site, { $days ->
        [one] 1 day
       *[other] { $days } days
    }
against = Settle this
ask = Ask this next
problems =
    { $count ->
        [one] 1 problem
       *[other] { $count } problems
    }
questions =
    { $count ->
        [one] 1 question
       *[other] { $count } questions
    }
asked-of = { $openings }: { $why }
changed = What your last answer changed
changed-line = { $what }: { $before } → { $after }
changed-at = { $opening }: { $what }: { $before } → { $after }
device = Device
no-device = none yet
new-problem = { $opening }New problem: { $problem }
settled = { $opening }Settled: { $problem }
own = House rules of your firm hold in it: they stand below the list of surveys.
