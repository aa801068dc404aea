# What is wrong with a value; it stands behind the name of its field.
no-id = is no id
no-record-id = is no id of a record
no-date = is no date
no-time = is no time
no-text = is no text
too-long = is too long
characters = has { $size } characters and may have { $low } to { $high }
unseen = holds a character that cannot be seen
no-whole = is no such whole number
no-number = is no such number
none-of = is none of: { $words }
no-list = is no list
entries = has { $size } entries and may have { $low } to { $high }
twice = names one thing twice
holds = holds what { $fault }
no-group = is no group of fields
strange = has a field "{ $field }" that is not known
lacks = has no { $field }
in-field = { $field } { $fault }
fields = has { $size } fields and may have { $low } to { $high }
no-limit = has no limit
value-or-over = has to have one of value and over
no-reading = is judged without a reading
no-reason = gives no reason
no-problem = does not say what the problem is
no-entry = is no entry
unknown-kind = is of a kind this version does not know ("{ $kind }")
other-visit = belongs to another visit
same-id = has the id of an earlier entry
counts-too-high = counts too high
in-entry = entry { $number } { $fault }
in-entries = entries { $fault }

# What is wrong with a file.
large = The file is too large to be the record of a visit.
no-json = The file is damaged, or no record of a visit: it cannot be read as JSON.
no-record = The file is no record of a visit.
other-version =
    The record was written by another version of this library. Open it with that version, or a newer one.
damaged = The record is damaged: { $fault }.
