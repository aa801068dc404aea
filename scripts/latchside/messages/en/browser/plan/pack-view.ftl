pack = The job pack
offered = Sheets to print, zones, parts, dates, the visit and the plan: the same files that { $command } makes on a computer from the survey’s file. They are made on this device.
make = Make the pack
hindered = First put right what is listed above.
making = Making the pack. The first time takes longest …
stopped = The pack was not made, and your survey is untouched: { $told }
print = Print the pack
zip = Save all as one file (ZIP)
each = Each file by itself
files = { $files } files

# What each file is.
document = The sheets, to read and to print
zones = Zone schedule, for a spreadsheet
parts = What goes on the van, for a spreadsheet
service = Service dates, for a calendar
visit = The visit with its openings, to bring in on the phone
plan = The whole plan as data
