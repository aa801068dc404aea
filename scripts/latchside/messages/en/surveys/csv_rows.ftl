broken-csv =
    .expected = cells that close the quotes they open
    .action = Correct this row; it and those below were not read.
sheet-too-large =
    .found = more rows
    .expected = at most { $most } rows
    .action = Split the survey.
