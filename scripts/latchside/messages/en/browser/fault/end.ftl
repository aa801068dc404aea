why =
    { $why ->
        [does-not-fit] That answer fits no cause that is left.
        [none-left] Every known cause is ruled out.
        [not-ours] What is left is work for a licensed electrician.
        [not-here] What is left could not be fixed here.
       *[other] The plan ends here.
    }
back = Back
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
next = Next
prove-it = Prove the opening
prove-why = The checklist, with the limits of its two ends
write = The visit
written = What was found stands in “{ $visit }”
write-none = Begin one to write this down
off-test = Off test and leave
off-test-why = The checklist for the last minutes on site
