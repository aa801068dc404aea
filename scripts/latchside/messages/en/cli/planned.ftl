lost =
    .found = a survey that ended the process that planned it, twice
    .expected = a survey that can be planned
    .action = Look for what is out of the ordinary in it, or give the machine more memory, and report it.
unexpected =
    .found = what the planner did not expect: { $error }
    .expected = a survey that can be planned
    .action = Look for a value that is out of the ordinary, and report it.
no-date =
    .found = a survey without a day
    .expected = the day the job is planned for
    .action = Give it with --date YYYY-MM-DD, or write `surveyed`.

other-records =
    A worker reads other records under { $folder } than this command, or runs another version of it. Give all of them
    the same folders, and start the workers again.
records-not-sound = The records have errors. Fix them first: { $command }
house-unread = The house rules in { $file } cannot be read: { $error }
house-not-sound = The house rules in { $file } have errors. Correct them first: nothing was planned.
