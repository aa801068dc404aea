locked = Locked away
none = No visit is open on this device.
open = Open visits
archived = Archived
openings =
    { $openings ->
        [one] 1 opening
       *[other] { $openings } openings
    }
lists = { $lists ->
        [one] 1 list
       *[other] { $lists } lists
    }, { $items ->
        [one] 1 item
       *[other] { $items } items
    } open
problems =
    { $problems ->
        [one] 1 problem
       *[other] { $problems } problems
    }
only-here =
    { $entries ->
        [one] 1 entry only on this device
       *[other] { $entries } entries only on this device
    }
in-file = saved as a file
visit-on = { $visit }, { $date }
loose = Without a visit
lists-only = Lists run without a visit
locked-visit = Locked visit of { $date }
opens-with = Opens with its passphrase

# A new visit.
start = Start a visit
site-name = A name for the site
site-help = As short as you would say it. No code.
date = Date
who = Who you are
who-help = Stands beside everything you record.
start-visit = Start this visit
give-both = Give the site a name and the visit a date.
promised = The browser has promised to keep it.
not-promised = The browser may clear it when space is short. The saved file is what stays.

# Entries that were found damaged.
damaged =
    { $entries ->
        [one] 1 stored entry was damaged and put aside. Everything else is unharmed.
       *[other] { $entries } stored entries were damaged and put aside. Everything else is unharmed.
    }
save-damaged = Save the damaged entries as a file
forget = Forget them
forget-asked =
    { $entries ->
        [one] 1 damaged entry will be gone for good.
       *[other] { $entries } damaged entries will be gone for good.
    }
