# Why a zone responds as it does.
delayed = People come in here, and need time to reach the keypad.
second-leaf-follows = It opens after the entry door, and waits only when that was opened first.
followed = It lies inside on the entry route: it waits only when the entry door was opened first.
instant = Nobody comes in here, so it answers at once, as the perimeter does.
instant-use-unknown = Its use is not known. Until it is, it answers at once, as the perimeter does.

# Whether it reports, and chimes.
reports = The site is monitored.
no-reports = Nobody receives reports from this site.
reports-in-doubt = Whether the site is monitored is not known. Reporting does no harm where nobody listens.
chime = The customer wants a chime.
no-chime = The customer wants no chime.
chime-unknown = Nobody said whether people want a chime: none is set.

input = Input: { $name }.
no-position = No position of the panel is free for it: the problems say what gives it one.

# $kind is the kind of opening.
shared-loop =
    { $kind ->
        [double-door]
            The contact of the second leaf is in series on the same loop, so both show under one name.
        [double-hung]
            The contact of the upper sash is in series on the same loop, so both show under one name.
       *[other]
            The second contact is in series on the same loop, so both show under one name.
    }

# How a fault of a zone shows. $layout is that of the resistors.
supervised-by-loop =
    { $layout ->
        [none] by its loop alone: a short is never seen, and a cut reads as an open door or window
        [series] by its loop: a short shows, and a cut reads as an open door or window
        [parallel] by its loop: a cut shows, and a short passes for a closed door or window
        [double] by its loop: a short and a cut both show
        [double-across] by its loop: a short and a cut both show
       *[unknown] by its loop; how far depends on the resistors that the panel asks for
    }
supervised = on: trouble shows within { $within }, as { $rule } asks
supervised-grade-unknown = on: trouble shows within { $within }, as { $rule } asks. The grade is not known
supervised-by-panel = on: the panel shows trouble when it is not heard
supervised-by-device =
    on: trouble shows when it is not heard for { $window }. The contract may ask for less

# The line of the tamper of a wired zone.
tamper = Tamper of { $position }
tamper-always-on = Tamper answers at any hour.
tamper-told-apart =
    { $layout ->
        [parallel]
            The resistor across the contacts a cut apart from an open door or window. A short still passes for closed.
       *[double]
            The two resistors set a short and a cut apart from an open door or window, so the position tells of tamper
            too.
    }
