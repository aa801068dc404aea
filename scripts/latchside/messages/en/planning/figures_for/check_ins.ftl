name = Check-ins

# Where no grade asks anything.
within = { $tries } within { $window }
in-a-row = Trouble shows when all { $tries } in a row are lost. A dead device goes unnoticed until then.
window-of-label = The window is the label's, and { $share } of check-ins are lost, each by itself.

# Where a grade asks. It is "grade 2" and so on, and "Grade 2" at the start of a sentence.
slowest = every { $slowest } at the slowest, { $asked } or less is asked
rule =
    { $grade ->
        [grade-1] Grade 1
        [grade-2] Grade 2
        [grade-3] Grade 3
       *[grade-4] Grade 4
    } asks for a message every { $between }, and for none older than { $setting } when the system is set.
from-memory = The times of the grade are those of EN 50131-1, from memory: check your edition.
grade-not-known = The grade is not known. It is judged as { grade }, a common one.
polling-not-known = Whether the panel polls its devices when it is set is not known.
grade =
    { $grade ->
        [grade-1] grade 1
        [grade-2] grade 2
        [grade-3] grade 3
       *[grade-4] grade 4
    }

# What follows: what proves it, or what is ordered instead.
good = The device checks in { $tries } times in that time. Prove it with nobody touching the opening.
only-two-way = It keeps that only where it is two-way and is polled when the system is set. See that happen.
in-seconds = Wire the opening, or order panel and device that both state { grade }.
too-seldom =
    It checks in too seldom. Order a device whose label says { $needed } or less, or wire the opening.
polled-may-take = One that is polled when the system is set may take { $polled }.

# Readings.
between = Time between check-ins
unheard = Supervision window
age = Age of the last message when setting
limit = at most { $limit }, as { grade } asks{ not-known }
often = at most { $limit }, or setting at { grade } finds the last message too old{ not-known }
not-known =
    { $known ->
        [no] { " " }(grade not known)
       *[yes] { "" }
    }
