second-person =
    .found = Work overhead at { $height } takes a platform and a second person, and one technician is planned.
    .action = Send a second person for it, and put platform and second person in the quote.
