# The columns of the table, and what stands in them.
order = order
time = time
by = by
what = what
taken-back = taken back
opening = opening
checklist = checklist
version = version
item = item
words = words
outcome = outcome
reading = reading
unit = unit
verdict = verdict
expected = expected
note = note
library = library
id = id
takes-back = takes back { $entries }
over-range = over range

# In the name of a file.
no-visit = no visit

# Taking the record along.
take = Take the record with you
unsaved =
    { $entries ->
        [one] Before you go: 1 entry is only on this device. Take the record with you.
       *[other] Before you go: { $entries } entries are only on this device. Take the record with you.
    }
saved =
    { $entries ->
        [one] All of it, 1 entry, is in a file that you saved.
       *[other] All of it, { $entries } entries, is in a file that you saved.
    }
noted = Noted: the record is saved.
save = Save as a file
look = Look for { $file } among the downloads. Is it there?
there = It is there
table = Save as a table
table-saved = The table opens in a spreadsheet. It cannot be brought in again: save the file as well.
share = Share
not-shared = Not shared.
share-refused = Sharing was refused. Save it as a file instead.

# Bringing a record in.
bring = Bring in a saved file
locked = This visit is locked away on this device. Unlock it first.
altered = The record was altered: an entry that is on this device reads otherwise in the file.
other-visit = The record was altered: it holds an entry of another visit.
visit-on = { $visit }, { $date }
lists-only = Lists run without a visit
found =
    { $entries ->
        [one] { $name }: 1 entry, { $fresh } of them new here.
       *[other] { $name }: { $entries } entries, { $fresh } of them new here.
    }
found-by =
    { $entries ->
        [one] { $name }: 1 entry by { $people }, { $fresh } of them new here.
       *[other] { $name }: { $entries } entries by { $people }, { $fresh } of them new here.
    }
unreadable = The file is too large, or cannot be read.
unchanged = { $fault } Nothing was changed.
nothing-new = { $found } Nothing to bring in.
brought =
    { $entries ->
        [one] 1 entry brought in.
       *[other] { $entries } entries brought in.
    }
leave = Leave it
bring-in = Bring it in
