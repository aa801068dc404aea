rule = No text of a job holds a code, or looks as if it did.

code =
    .found = { $field }, which looks as if it held a code
    .expected = a text without codes
    .action = Take the code out. If it is none, name the field under `no_codes` of its opening or of the job.
