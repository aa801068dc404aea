needed = needed
open = open
not-stored = Not stored yet: “{ $answer }”.
code-kept-out =
    This looks as if it held a code. A code never belongs in a record: take it out. Until then it is kept out of the
    pack.
code-not-stored =
    This looks as if it held a code. A code never belongs in a record: take it out. Until then it is not stored.
