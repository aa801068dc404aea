empty-list = an empty list

too-large =
    .found = more than { $most } bytes
    .expected = a list of causes
    .action = Shorten it.

not-utf-8 =
    .found = bytes that are no text
    .expected = text in UTF-8
    .action = Save the file as UTF-8.

not-a-list =
    .found = { $found }
    .expected = a list of causes, each with { $keys }, or a fault record
    .action = Write the file as such a list.

not-a-group =
    .found = { $found }
    .expected = a group with { $keys }
    .action = Write the cause as such a group.

unknown-key =
    .found = { $key }
    .expected = { $keys }.{ $hint }
    .action = Correct the key, or delete it.

missing-key =
    .found = a cause without { $quoted }
    .expected = { $key }
    .action = Add { $key }.

no-name =
    .found = { $value } for { $key }
    .expected = words
    .action = Name the cause.

no-number =
    .found = { $value } for { $key }
    .expected = a number
    .action = Correct the value.

negative =
    .found = { $value } for { $key }
    .expected = zero or more
    .action = Correct the number.

twice =
    .found = the cause { $cause } a second time
    .expected = each cause once
    .action = Join the two, or name one otherwise.

sum =
    .found = probabilities that add up to { $total }
    .expected = 1
    .action = Correct them, or add the cause that is missing.
