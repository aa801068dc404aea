off = The saved copy is switched off.
saved =
    { $files ->
        [one] Saved on the first visit: { $first } MB in 1 file ({ $groups }). On request: { $rest } MB more.
       *[other] Saved on the first visit: { $first } MB in { $files } files ({ $groups }). On request: { $rest } MB more.
    }
