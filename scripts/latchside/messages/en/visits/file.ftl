file = the file
file-at = the file, { $path }
entry = entry { $number }
entry-at = entry { $number }, { $path }

too-large =
    .found = it is larger than any record of a visit
    .action = Choose the saved record.

cannot-read =
    .found = it cannot be read: { $why }
    .action = Choose another file.

not-utf-8 =
    .found = it is damaged, or no text in UTF-8
    .action = Save the record again.

not-json =
    .found = it cannot be read as JSON
    .action = Save the record again; this copy is damaged.

field-twice =
    .found = a field stands in it twice
    .action = Save the record again; this copy is damaged.

no-number =
    .found = it holds { $word }, which is no number
    .action = Save the record again; this copy is damaged.

no-record =
    .found = it is no record of a visit
    .action = Choose a file saved from the page of visits.

other-version =
    .found = it is of version { $version }
    .action = Read it with a newer version.

half-a-character =
    .found = a text in it holds half a character
    .action = Save the record again.

unknown-kind =
    .found = it is of the kind { $kind }
    .action = Known kinds: { $known }.

other-visit =
    .found = it belongs to another visit
    .action = Save the record again; this copy was altered.

id-twice =
    .found = it has the id of an earlier entry
    .action = Save the record again; this copy was altered.

counter-too-high =
    .found = its counter, { $counter }, is too high for this record
    .action = Save the record again; this copy was altered.

# What does not fit the schema of a visit, by the word of JSON Schema.
lacks = it has no { $keys }
unknown-fields = it has fields that are not known: { $keys }
breaks-type = { $value } is no { $expected }
breaks-enum = { $value } is none of { $expected }
breaks-const = { $value } is not { $expected }
breaks-pattern = { $value } has the wrong form
breaks-not = it holds a character that cannot be seen
breaks-anyOf = it does not say what the problem is
breaks-oneOf = it has the wrong form
breaks-uniqueItems = it names one thing twice
breaks-dependentRequired = it is judged without a reading
breaks-other = { $value } does not keep to { $rule } { $expected }
see-schema = See schema/visit.schema.json.
