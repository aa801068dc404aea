outcome =
    { $outcome ->
        [done] Done
        [problem] Problem
       *[not-applicable] Not applicable
    }
outcome-of =
    { $outcome ->
        [done] Done: { $words }
        [problem] Problem: { $words }
       *[not-applicable] Not applicable: { $words }
    }
stored =
    { $outcome ->
        [done] Done: { $words }.
        [problem] Problem: { $words }.
       *[not-applicable] Not applicable: { $words }.
    }
judged =
    { $verdict ->
        [inside] { $reading }, inside: expected { $expected }
       *[outside] { $reading }, outside: expected { $expected }
    }
not-done = Not done?
change = Change
problem = Problem
not-applicable = Not applicable
open-again = Open again
leave = Leave it

# How an item stands.
again = Open again:
reworded = this item reads otherwise now. It was: { $words }
open = Open:
differs = two entries do not agree. Look again, then choose.
skipped = Skipped: still open.
storing = Not stored yet: { $words }. Wait until its tick shows.
opened-again = Open again: { $words }.
answered = This item has an outcome already. Press Change to give it another.
reading-first = Type the reading first: it makes this item done.

# What is asked.
which-problem = What is the problem?
save-problem = Save as a problem
why-not = Why does it not apply?
save-not-applicable = Save as not applicable
why-holds = Why does this reading hold here?
save-done = Save as done
