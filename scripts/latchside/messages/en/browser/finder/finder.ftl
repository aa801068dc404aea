find = Find
last-used = Last used:
type = Type a symptom, a device, a word or a checklist.
example = For example: shows open, battery low, surface contact, EOL, 2.2 kΩ.
checklist = Checklist
no-index = The finder's file is not saved on this device, and the site does not answer.
found =
    { $answers ->
        [0] Nothing found. Try fewer words, or say it another way.
       *[other] { $answers } found
    }
