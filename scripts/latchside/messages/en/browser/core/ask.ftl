code-warning =
    This looks as if it held a code. A code never belongs in a record: take it out. If it is none, press again.
code-warning-in =
    { $fields }: This looks as if it held a code. A code never belongs in a record: take it out. If it is none, press
    again.
write-first = { $asked }: write it first.
leave = No, leave it
