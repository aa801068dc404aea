all-openings = All openings
numbered = { $number }. { $opening }
count = Opening { $number } of { $openings }, { $open }.
copy = Copy this opening
take-away = Take it away
next = Next opening
