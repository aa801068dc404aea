# The file.
file-ending =
    .found = "{ $name }"
    .expected = a file that ends in { $endings }
    .action = Rename the file.
not-a-file =
    .found = no file
    .expected = the file of a survey
    .action = Correct the name.
cannot-read =
    .found = no way to read it
    .expected = a file that may be read
    .action = Fix the file's permissions.
file-too-large =
    .found = a larger file
    .expected = at most { $most } bytes
    .action = Split the survey.
empty-file =
    .found = an empty file
    .expected = a survey
    .action = Fill one in: latchside new survey corner-shop.csv

# The survey.
wrong-type =
    .found = no survey
    .expected = keys such as id, name and openings
    .action = See the template.
no-opening =
    .found = no opening
    .expected = at least one
    .action = Add the openings.
missing-key =
    .found = the survey without "{ $key }"
    .expected = { $key } of the survey
    .action = Add at the top: { $line } – until then it is { $until }.
too-many-openings =
    .found = { $count } openings
    .expected = at most { $most } in one survey
    .action = Split the survey, one for each building or floor. Nothing was planned.
hidden-sign =
    .found = the sign { $sign }, which cannot be seen, in { $where }
    .expected = text that can be read
    .action = Type the text again.
code =
    .found = { $where }, which looks as if it held a code
    .expected = a survey without codes
found-for = { $found }, for { $where }
too-many-findings =
    .found = { $count } findings more than are shown
    .expected = a survey like the template
    .action = Correct those above first, then read the survey again.

# How a field of the survey is written.
line-csv = { $key },{ $value }
line-cells = { $key } in the first cell, { $value } in the second
line-json = "{ $key }": "{ $value }",
line-yaml = { $key }: { $value }
example-name = Corner shop
stand-in-name = Survey { $id }

# Where something stands.
the-survey = the survey
opening = opening { $number }
field-of = { $field } of { $opening }
