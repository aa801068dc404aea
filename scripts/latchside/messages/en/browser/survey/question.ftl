needed = needed
open = open
choose = Choose
minus = Minus
code-kept-out =
    This looks as if it held a code. A code never belongs in a record: take it out. Until then it is kept out of the
    pack.
code-not-stored =
    This looks as if it held a code. A code never belongs in a record: take it out. Until then it is not stored.
no-code = It is no code: keep it
