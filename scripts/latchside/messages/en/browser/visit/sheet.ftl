mark =
    { $state ->
        [open] ☐ OPEN
        [done] Done
        [not-applicable] Not applicable
        [problem] PROBLEM
       *[differs] OPEN: entries differ
    }
judged =
    { $verdict ->
        [inside] { $reading } – inside, expected { $expected }
       *[outside] { $reading } – outside, expected { $expected }
    }
lists-only = Lists run without a visit
signature = Name, date, signature:
library = Library { $library }. Printed { $when }.
item = Item
reading = Reading, note
time = Time, by
list-at = { $list }: { $opening }
an-opening = an opening
complete = Complete, { $signed }
not-complete = NOT COMPLETE: { $open } open
notes = Notes
note = { $note } ({ $signed })
note-at = { $opening }: { $note } ({ $signed })
