close = Close
ask = What do you see, have or need?
find = Find
last-used = Last used:
type = Type a symptom, a device, a word or a checklist.
checklist = Checklist
no-index = The finder's index is not saved on this device, and the site does not answer.
found =
    { $answers ->
        [0] Nothing found. Try fewer words, or say it another way.
       *[other] { $answers } found
    }
under = { $kind }: { $text }
