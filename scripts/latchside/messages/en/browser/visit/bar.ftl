change = Change
change-where = Change where it writes to
missing = The visit asked for is not on this device.
archived = The visit { $site } is archived.
unsaved =
    { $entries ->
        [one] 1 entry is only on this device.
       *[other] { $entries } entries are only on this device.
    }
saved = Saved as a file.
save = Save it as a file
see-all = See all of it
no-visit = no visit
a-visit = a visit
no-visit-here = No visit, this device only
visit-on = { $visit }, { $date }
hold-missing = This visit is no longer on this device. Choose another.
hold-archived = This visit is archived. Choose another.
hold-opening = Choose the opening first: this list is run once for each.
kept = Stored on this device before it shows. In a private window it goes when the window closes.
refused =
    This browser refuses to store anything here ({ $why }). Ticks and readings stay only while this page is open: print
    it, or save the file, before you leave it.
