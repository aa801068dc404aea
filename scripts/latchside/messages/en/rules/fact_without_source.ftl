rule = A fact names its source, or is marked common practice, typical or on the label.

no-source =
    .found = the status { $status } without a source
    .expected = source: the id of a source record
    .action = Name the source, or mark it common practice if it is trade habit.

source =
    .found = the status { $status } with the source { $source }
    .expected = no source beside { $status }
    .action = Drop the source, or correct the status.
