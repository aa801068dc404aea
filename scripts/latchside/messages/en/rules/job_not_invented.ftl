rule = A job in the library is invented, says so, and names the day it is planned for.

not-invented =
    .found = a job that is not marked as invented
    .expected = invented: true, where site and people are made up
    .action = Mark it if it is; keep the survey of a real site in the folder surveys/.

no-day =
    .found = an invented job without a day
    .expected = surveyed: the day it is planned for
    .action = Add surveyed.
