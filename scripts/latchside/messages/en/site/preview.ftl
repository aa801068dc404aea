about = Preview: what the check found
none-here = Nothing found in this page’s record.
checking = The whole library is being checked …
none-elsewhere = Nothing found in the rest of the library.
elsewhere =
    { $count ->
        [one] One finding in the rest of the library
       *[other] { $count } findings in the rest of the library
    }
check-failed = The check of the whole library did not end; run make check to see why.
broken-title = This page cannot be made yet
broken = Fix what stands above and save; the page comes back by itself.
not-made = The page could not be made: { $error }
finding = { $found }. Expected: { $expected } Next: { $action }
