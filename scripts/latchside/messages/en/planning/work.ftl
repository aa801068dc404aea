# What is said of a stage beside its procedures.
fix-contact = Try the gap of its wired contact in place, then fix that as well.
written-yes = Begin only with a written yes of those who answer for its certificate and for local code.
in-doubt =
    { $what ->
        [fire] Begin only when it is known not to be fire-rated.
        [escape] Begin only when it is known to be no escape way.
       *[both] Begin only when it is known not to be fire-rated and no escape way.
    }
high = The work is high: stand steps or a platform.
overhead = The work is overhead: set up a platform or a tower scaffold first, with a second person beside it.
too-high = The work is too high for steps: set up a tower or a powered platform first.
unheard = Not heard by the figures: begin only when its walk test is passed. Else stop, with no pad and no screw.
made-safe = Its loop is metered and its end made safe; proof comes after landing.
pads = Pads reach full strength after a day: pull test on the next day on site, or at the first service.
waiting = Waiting is in this time.

questions =
    { $count ->
        [one] Settle the open questions of the survey before parts are packed: { $count } answer.
       *[other] Settle the open questions of the survey before parts are packed: { $count } answers.
    }
