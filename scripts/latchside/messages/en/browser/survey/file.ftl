site = Site
typed = { $name }: “{ $text }”
take = Take it with you
noted = Noted: the survey is saved.
save = Save as a file
look = Look for { $file } among the downloads. Is it there?
there = It is there
share = Share
not-shared = Not shared.
share-refused = Sharing was refused. Save it as a file instead.
print = Print the survey
hindered = Before it can leave as a file:
hindrance = { $fault }.
in-file = All of it is in a file that you saved.
only-here = What was changed last is only on this device. Take it with you.
left-out =
    { $answers ->
        [one] 1 answer does not read and would stay out of the file: { $typed }.
       *[other] { $answers } answers do not read and would stay out of the file: { $typed }.
    }
plan = On a computer with this library, { $command } makes the pack of the job from it.

# Bringing a survey in.
no-json = The file is damaged, or no survey saved here: it cannot be read as JSON.
no-survey = The file is no survey: it has no list of openings.
second-id = a second id { $id }
misfit = The survey does not fit this form: { $fault }.
unreadable = The file is too large, or cannot be read.
unchanged = { $fault } Nothing was changed.
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
bring = Bring in a saved survey
bring-help = A file that was saved on a page like this one.
