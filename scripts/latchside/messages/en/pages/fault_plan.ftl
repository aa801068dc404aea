# How often a run comes to a point.
share-always = every run
share-often = often
share-sometimes = sometimes
share-rare = rare

still-there = Still there
put-back-first = first put back: { $lines } { $end }
go = go to { $fault }
pass-to = pass it on: { $who }

# Why a run ends.
end-none-left = no cause is left, pass it on
end-does-not-fit = fits no cause left, pass it on
end-result = pass it on
