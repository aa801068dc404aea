# What each file of a pack is.
zones-csv = Zone schedule, for a spreadsheet
parts-csv = What goes on the van, for a spreadsheet
service-ics = Service dates, for a calendar
visit-json = The visit with its openings, to bring in on the phone
plan-json = The whole plan as data
