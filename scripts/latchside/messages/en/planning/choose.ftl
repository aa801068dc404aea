too-little = The survey says too little to choose between the classes that are left. Its questions come first.

# Why a class was chosen, and what stands against it. $reason is a sentence or more of its profile.
contact-stays = The sound contact in place stays, with its hole and its own label: a new one would do no more.
one-left = It is the one class that is left for this opening.
least-against = Nothing speaks for any class here, and least against this one.
on-loop = On its loop: { $contact }. { $reason }
one-wired = It is the one wired class for such an opening.
on-loop-against = { $contact } on its loop. { $reason }
not-known = Not known: { $fields }. This would rule it out: { $reason }

# Why a class was passed over.
not-made = It is not made for this kind of opening: { $kind }.
ruled-out = Ruled out. { $reason }
lead-chose = The lead has chosen another class.
thrown-away = The sound contact in place stays. For this one it would be thrown away.
still-possible = It stays possible until the questions are answered.
fewer-points = It fits this opening less well than the class chosen: { $points } points against { $chosen }.
could-fall = As much speaks for it, and more that is not known could still rule it out.
wired-first = As much speaks for it. Between equals a wired class comes first: it has no battery and no radio path.

override-ruled-out =
    .found = { $device }, chosen by the lead. { $reasons }
    .action = Choose another class, or have the cause removed and write it in the survey.
wider-reach =
    .found = The gap, with its play, is too wide for { $narrow }.
    .action =
        Order a contact with a longer make distance for the loop of the { $device }, or have the door or window
        adjusted first.
life-safety =
    .found =
        { $barred ->
            [both] Fire-rated and an escape way: what may be fitted is for its certificate and local code to say.
            [fire-rated] Fire-rated: what may be fitted is for its certificate and local code to say.
           *[escape] An escape way: what may be fitted is for its certificate and local code to say.
        }
    .action =
        Nothing is drilled here. Ask who answers for the certificate and for local code, in writing, before any
        body or cable is fixed to it.

# No class is left for an opening.
all-ruled-out = Every class is ruled out. { $causes }
none-made = No class is made for this kind of opening.
change-leave =
    Get the owner's written leave for screws or anchors in floor, wall or post beside the opening: nothing holds a
    contact there without. Else ask the lead for another kind of detection behind the opening.
change-cause =
    Have hinge, latch or seal repaired first where the gap is the cause. Otherwise ask the lead for a contact of
    a longer make distance or one made for the weather, or for another kind of detection behind the opening.
