devices = Devices this is for
own-figures = { $stage }, with its own figures
checklists = Checklists for it
