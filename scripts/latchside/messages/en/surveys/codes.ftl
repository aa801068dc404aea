# Stands in the place of a note.
withheld = (Kept out of the pack: it looks as if it held a code. It stands in the survey.)
# What to do about a note, and about a name. Whose field it is: of an opening or of the survey.
code-in-note =
    Its words are kept out of the pack. { advice }
code-in-name =
    Its digits are kept out of the pack. { advice }
advice =
    { $of ->
        [opening]
            Take the code out, tell it by word of mouth and have it changed. If it is none, write { $field } under
            `no_codes` of this opening; the form asks.
       *[survey]
            Take the code out, tell it by word of mouth and have it changed. If it is none, write { $field } under
            `no_codes` of the survey; the form asks.
    }
