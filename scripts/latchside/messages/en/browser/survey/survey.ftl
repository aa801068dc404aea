next = Next open question
next-left = Next open question ({ $open })
nothing-open = Nothing open
add = Add an opening
this-survey = This survey
print-blank = Print a blank sheet
kept = Kept on this device at every answer.
opening-gone = This opening was taken away.
survey-gone = This survey is not on this device.
all-openings = All openings
all-surveys = All surveys
openings =
    { $openings ->
        [one] 1 opening
       *[other] { $openings } openings
    }
in-file = saved as a file
only-here = only on this device
no-name = A site without a name
surveys = Surveys on this device
none = No survey is on this device.
give-name = Give the site a name first.
start = Start a survey
start-survey = Start this survey
refused =
    This browser refuses to store anything here ({ $why }). A survey stays only while this page is open: save the file
    before you leave it.
kept-promised = Kept on this device at every answer. The browser has promised to keep it.
kept-not-promised =
    Kept on this device at every answer. The browser may clear it when space is short, so the saved file is what stays.
saving = Saving…
saved = Saved on this device, { $at }.
not-stored = Not stored: kept only while this page is open.
try-again = Try again
all-answered = Nothing is open in this survey.
