find = Find it step by step
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
all-answers = Show every answer
again = Step { $number }, once more
leave = Leave it as it was
change = Change step { $number }
dropped =
    { $steps ->
        [one] One later step no longer fits, and was taken out.
       *[other] { $steps } later steps no longer fit, and were taken out.
    }

# An answer that does not fit what was typed.
which = You typed { $reading }; expected { $expected }. Which is right?
reading-right = The reading, { $reading }: show the answers that fit it
answer-right = The answer: “{ $answer }” The reading was typed wrong.
type-again = The answer: “{ $answer }” Type the reading again.
type-it = Type the reading
unread = No reading is typed, so nothing shows this yet: “{ $answer }”
not-read = It cannot be read
prove = Prove it. What do you see?
still-there = Still there
back = Back
cannot = Can't do this one
else = Something else

# What was answered, in the list of what was done.
seen-read = { $answer } ({ $reading })
seen-unread = { $answer } (no reading was typed)
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
