title = No page here
happened = Nothing stands at this address: it may have been typed wrong, or the page has moved.
on-site = On site
checklists = Checklists in the order of a visit
faults = Find a fault
symptoms = From what you see to the next check
devices = Devices
installing = Choose one, install it step by step
home = Home
everything = Everything in this library
no-signal = No signal?
saved =
    Pages saved on this device open without a network. For any other, note its address and open it again where there
    is signal.
saved-copy = What is saved here
