this-survey = This survey
opening-gone = This opening was removed.
survey-gone = This survey is not on this device.
all-openings = All openings
all-surveys = All surveys
numbered = { $number }. { $opening }
add = Add an opening
next-left = Next open question ({ $open })
next-opening = Next opening with questions ({ $open })
next-site = Open questions of the site ({ $open })
nothing-open = Nothing open

# Whether all is stored.
kept = Kept on this device at every answer.
saving = Saving…
saved = Saved on this device, { $at }.
not-stored = Not stored: kept only while this page is open.
code-waits =
    { $answers ->
        [one] Not stored: 1 answer that looks as if it held a code.
       *[other] Not stored: { $answers } answers that look as if they held a code.
    }
try-again = Try again
trial = Trial, not stored
