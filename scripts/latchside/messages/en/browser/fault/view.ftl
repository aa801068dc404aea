why =
    { $why ->
        [does-not-fit] That answer fits no cause that is left.
        [none-left] Every known cause is ruled out.
        [not-ours] What is left is work for a licensed electrician.
        [not-here] What is left could not be fixed here.
       *[other] The plan ends here.
    }
no-device = Not known, or another
which-device = Which device?
some-causes = Some causes belong to one kind only.
fix = Fix { $number }
check = Check { $number }
gone = The fault is gone
another = It is another fault
pass = Pass it on
on = On: { $device }.
causes =
    { $causes ->
        [one] 1 cause is possible, about { $minutes } min expected from here.
       *[other] { $causes } causes are possible, about { $minutes } min expected from here.
    }
put-back-label = Put back:
put-back = Put back first:
ready = Make ready:
what-seen = What do you see?
prove = Prove it. What do you see?
fixed = Fixed, and the proof holds.
fixed-still = Fixed, and the fault is still there: ruled out.
still-there = Still there
could-not = Could not be done.
could-not-fix = Likely, but could not be fixed here.
back = Back
cannot = Can't do this one
else = Something else
anew = Start anew
it-was = It was: { $cause }.
go-on = Go on with: { $fault }
likely = Likely: { $cause }.
pass-to = Pass it to
ruled-out = Ruled out
not-checked = Not checked
possible = Still possible
not-fixed-here = { $cause } (could not be fixed here)
prevented-by = Prevented by
prevented = Prevented by: { $step }

# What was answered, in the list of what was done.
seen-gone = the fault is gone
seen-still = still there, ruled out
seen-not-fixed = could not be fixed here
seen-else = the plan was left
seen-cannot = could not be done
so-far =
    { $steps ->
        [one] So far: 1 step
       *[other] So far: { $steps } steps
    }
