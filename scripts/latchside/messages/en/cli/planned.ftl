lost =
    .found = a survey that ended the process that planned it, twice
    .expected = a survey that can be planned
    .action = Look for what is out of the ordinary in it, or give the machine more memory, and report it.
