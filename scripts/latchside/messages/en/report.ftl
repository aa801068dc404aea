found = found     { $found }
expected = expected  { $expected }
next = next      { $action }
annotation = { $found }. Expected: { $expected } { $action }

nothing-found = { $records ->
    [one] { $records } record, nothing found.
   *[other] { $records } records, nothing found.
}
summary = { $records ->
    [one] { $records } record
   *[other] { $records } records
}: { $errors ->
    [one] { $errors } error
   *[other] { $errors } errors
}, { $warnings ->
    [one] { $warnings } warning
   *[other] { $warnings } warnings
}.
