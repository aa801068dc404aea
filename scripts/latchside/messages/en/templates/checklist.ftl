who = Who
how = How
site = Site
opening = Opening
name = Name
date = Date
only = { $devices } only
not-kept =
    Ticks and readings stay while this page is open and go when it is closed. Print the page, or write the readings on
    the job sheet, before leaving it.
for-devices = For these devices
about = About this list, and its devices
foot = Numbers, words, and where this comes from
