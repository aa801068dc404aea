surveys = Surveys on this device
none = No survey is on this device.
no-name = A site without a name
openings =
    { $openings ->
        [one] 1 opening
       *[other] { $openings } openings
    }
open =
    { $questions ->
        [0] all answered
        [one] 1 not answered
       *[other] { $questions } not answered
    }
in-file = saved as a file
only-here = only on this device
start = Start a survey
start-survey = Start this survey
print-blank = Print a blank sheet

# Bringing a survey in.
bring = Bring in a saved survey
bring-help = A file that was saved on a page like this one.
unchanged = { $file }: { $fault } Nothing was changed.
bring-in = Bring it in
found =
    { $openings ->
        [one] { $site }: 1 opening.
       *[other] { $site }: { $openings } openings.
    }
twin = A survey of this id is on this device. Both will stand side by side.
unknown = This form does not know, and leaves out: { $fields }.
unknown-more = This form does not know, and leaves out: { $fields } and { $more } more.
code-in = It looks as if a code stood in: { $fields }. A code never belongs in a survey.
leave = Leave it

# Where surveys are kept.
refused =
    This browser refuses to store anything here ({ $why }). A survey stays only while this page is open: save the file
    before you leave it.
kept-promised = Kept on this device at every answer. The browser has promised to keep it.
kept-not-promised =
    Kept on this device at every answer. The browser may clear it when space is short, so the saved file is what stays.
