"""The files of a pack: tables, calendar, visit, plan as data, and all of them in one archive. Pure, and always the
same bytes for the same plan."""
