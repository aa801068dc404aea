take = Take it with you
save = Save as a file
look = Look for { $file } among the downloads. Is it there?
there = It is there
share = Share
print = Print the survey
hindered = A file of it opens here again as it is. It can be planned once this is put right:
hindrance = { $fault }.
in-file = All of it is in a file that you saved.
only-here = What was changed last is only on this device. Take it with you.
unread =
    { $answers ->
        [one] 1 answer does not read and would stay out of the file: { $typed }.
       *[other] { $answers } answers do not read and would stay out of the file: { $typed }.
    }
not-stored =
    { $answers ->
        [one] 1 answer is not stored and would stay out of the file: { $typed }.
       *[other] { $answers } answers are not stored and would stay out of the file: { $typed }.
    }
