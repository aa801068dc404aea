second-person =
    .found = Work at { $height }, from a platform or a tower, takes a second person, and one technician is planned.
    .action = Send a second person for it, and put both people and what they stand on in the quote.
