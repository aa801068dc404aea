first = Do this first:
on = On
symptom = How it shows
seen = Seen
says = People say
quoted = “{ $words }”
likeliest = Likeliest causes
good-reading = Right is:
stop-when = Stop, and pass it to the { $who }:
what-to-say = What to say, how to leave it
reference = Numbers, words, sources
how-often = How often: a common-practice estimate. One cause at a time is assumed.
checks = All checks
about-minutes = About { $minutes } min
good = Good:
leaves = leaves: { $causes }
go-to = go to { $fault }
pass-on = stop and pass it on
put-back = Put back:
remedies =
    { $causes ->
        [one] The cause and its remedy
       *[other] All { $causes } causes and their remedies
    }
only = { $devices } only
who = Who
parts = Parts
none = none
gone-when = Gone when
after = Rule out first
prevented-by = Prevented by
who-minutes = { $who }, about { $minutes } min
escalate = If none of these
stop = Stop
pass-to = Pass it to
tell = Tell them
leave = Leave it
