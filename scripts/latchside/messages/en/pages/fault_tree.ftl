title = Plan: { $fault }
about =
    The plan for “{ $fault }”: { $points } points, about { $minutes } minutes expected. A box with corners is a check, a
    rounded heavy box a remedy; the words above a box are the answer that leads to it, and how often a run comes there.
check = { $number }  { $action }. { $minutes } min
remedy = { $number }  Fix: { $action }. { $minutes } min
leads = { $answer } → { $end }
reached = { $answer } ({ $share })
still-there = Still there
go = go to “{ $fault }”

# Why a run ends.
end-none-left = pass it on
end-does-not-fit = fits nothing left: pass it on
end-result = pass it on
end-not-ours = pass it on: licensed electrician
