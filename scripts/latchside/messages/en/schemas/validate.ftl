the-record = the record
a-value = a value

missing-key =
    .found = { $where } without { $quoted }
    .expected = { $key }: { $about }
    .action = Add { $key }.

unknown-key =
    .found = { $key } in { $where }
    .expected = { $known }.{ $hint }
    .action = Correct the key, or delete it.

unknown-name =
    .found = { $name } in { $where }
    .expected = { $known }.{ $hint }
    .action = Use one of the known names.

unknown-word =
    .found = { $value } for { $where }
    .expected = { $known }.{ $hint }
    .action = Use a listed word.

wrong-type =
    .found = { $value } for { $where }
    .expected = { $expected }
    .action = Correct the value.

number-for-text =
    .found = { $value } for { $where }
    .expected = { $expected }
    .action = Quote it to make it text.

text-for-number =
    .found = { $value } for { $where }
    .expected = { $expected }
    .action = Write { $number }: a number with a point for its decimals, and without quotes.

# What a value may be, by the names of JSON Schema.
type-object = a group of keys
type-array = a list (lines that start with -)
type-string = text
type-number = a number
type-integer = a whole number
type-boolean = true or false
type-null = nothing

with-keys = with { $keys }

form-of-a-name =
    .found = { $name } in { $where }
    .expected = a name of lower-case words joined by hyphens
    .action = Correct the name.

wrong-form =
    .found = { $value } for { $where }
    .expected = { $about }
    .action = Correct the form.

count-between =
    .found = { $count } in { $where }
    .expected = { $low } to { $high }
    .action = Add, split or remove entries.

count-at-least =
    .found = { $count } in { $where }
    .expected = at least { $low }
    .action = Add, split or remove entries.

count-at-most =
    .found = { $count } in { $where }
    .expected = at most { $high }
    .action = Add, split or remove entries.

length-between =
    .found = { $count } characters in { $where }
    .expected = { $low } to { $high } characters
    .action = Shorten it, or split it.

length-at-least =
    .found = { $count } characters in { $where }
    .expected = at least { $low } characters
    .action = Write it out.

limit-minimum = at least { $figure }
limit-exclusiveMinimum = more than { $figure }
limit-maximum = at most { $figure }

out-of-range =
    .found = { $value } for { $where }
    .expected = { $limits }
    .action = Correct the number.

wrong-value =
    .found = { $value } for { $where }
    .expected = { $expected }
    .action = Correct the value.

repeated-entry =
    .found = an entry twice in { $where }
    .expected = each entry once
    .action = Delete the second.

wrong-shape =
    .found = { $value } for { $where }
    .expected = { $expected }
    .action = See the schema for the shape.
