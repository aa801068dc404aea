procedures = { $names }.
on-day = Day { $day }: { $work }

# What is said of a stage beside its procedures.
fix-contact = Fix the wired contact of its loop as well.
written-yes = Begin only with a written yes of those who answer for its certificate and for local code.
life-safety-unknown = Begin only when it is known not to be fire-rated and no escape way.
high = The work is high: stand the ladder.
too-high = The work is too high for steps: set up a tower or a powered platform first.
waiting = Waiting is in this time.

# Work of the site; $procedure is the name of what is done.
land =
    { $loops ->
        [one] { $procedure }: { $loops } loop, the panel powered down once.
       *[other] { $procedure }: { $loops } loops, the panel powered down once.
    }
take-over = { $procedure }. Nothing is opened, programmed or changed before it is through.
hand-over-waits = { $procedure }. Waiting for check-ins is in this time.
questions =
    { $count ->
        [one] Settle { $count } open question of the survey before parts are packed.
       *[other] Settle { $count } open questions of the survey before parts are packed.
    }
