rule = No class of device is listed for a kind of opening at which it always trips past the limit.

late =
    .found = { $kind }, whose edge has opened { $travel } before the contact trips, past { $limit }
    .expected = a kind whose limit in { $file } the travel keeps
    .action = Take { $kind } out of openings, or state the travel that the label promises.
