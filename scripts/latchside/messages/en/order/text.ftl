title = { $fault }, on: { $device }
expected = Expected minutes: { $minutes }
not-exact =
    Too large to be solved exactly: at most { $gap } min above the best possible, which is at least { $bound } min.
assumed =
    One fault at a time is assumed. How often each cause is behind it, and the minutes, are common-practice guesses.

# The table of other orders.
other-orders = The same in other orders, expected minutes:
by-frequency = by frequency alone
by-time = by time alone
worst-order = in the worst order
not-searched = not searched, the problem is too large

# The columns of a plain list.
cause = cause
probability = probability
minutes = minutes
left = probability left
to-go = minutes to go

# One point of the plan.
put-back = Put back: { $line }
fix = Fix: { $cause }
takes = Takes { $minutes } min. { $share } of runs come here. { $expected } min expected from here.
takes-with-set-up =
    Takes { $minutes } min and { $more } min for: { $needs }. { $share } of runs come here. { $expected } min expected
    from here.
still-possible = Still possible: { $causes }
good = Good: { $words }
remedy = Who: { $who }. Gone when: { $proof }
if-it-fails = If the proof fails → { $to }

# Where an answer leads, behind an arrow.
put-back-then = put back: { $line } Then { $to }
go = go to the fault “{ $fault }”
pass-on-to = pass it on to: { $who }
pass-on-result = pass it on
pass-on-does-not-fit = pass it on (no cause left fits)
pass-on-none-left = pass it on (no cause is left)

# A plan without a point.
only-pass-on = Pass it on (no cause is left).
only-pass-on-to = Pass it on to: { $who }.

escalate = Pass it on to: { $who }. { $when }
tell = Tell them: { $words }
leave = Leave it: { $words }
