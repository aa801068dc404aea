devices = Devices this is for
count = { $count }
own-figures = { $stage }, with its own figures
checklists = Checklists for it
