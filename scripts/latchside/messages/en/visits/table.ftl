visit = { $site }, { $day }
no-visit = Lists run without a visit
who = Who: { $who }
archived = Archived.

# Titles of the tables and of their columns.
openings = Openings
notes = Notes
list = { $name } (version { $version })
list-at = { $name }: { $opening } (version { $version })
opening = Opening
device = Device class
note = Note
item = Item
outcome = Outcome
reading = Reading, note
when = When, by

# What stands in them.
not-chosen = not chosen
some-opening = an opening
outcome-done = done
outcome-not-applicable = not applicable
outcome-problem = PROBLEM
outcome-differs = ENTRIES DIFFER
over-range = over range
reading-inside = { $figure }, inside: expected { $expected }
reading-outside = { $figure }, outside: expected { $expected }
complete = Declared complete: { $when }

summary =
    { $entries ->
        [one] 1 entry
       *[other] { $entries } entries
    }, { $taken_back } taken back; { $items ->
        [one] 1 item
       *[other] { $items } items
    } answered, { $problems ->
        [one] 1 problem
       *[other] { $problems } problems
    }, { $differing } where entries differ.
summary-by =
    { $entries ->
        [one] 1 entry
       *[other] { $entries } entries
    } by { $people }, { $taken_back } taken back; { $items ->
        [one] 1 item
       *[other] { $items } items
    } answered, { $problems ->
        [one] 1 problem
       *[other] { $problems } problems
    }, { $differing } where entries differ.
