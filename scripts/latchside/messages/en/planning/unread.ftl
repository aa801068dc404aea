code = Line { $line } of the survey: { $found }.
not-read =
    .found = Line { $line } of the survey could not be read: { $found }.
    .action = Correct the survey and plan again.
