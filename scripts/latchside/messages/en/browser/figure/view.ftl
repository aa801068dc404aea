more = More
may-be-empty = (may be empty)
usual = As usual
instead = Instead: { $input }
unit = { $input }: unit { $unit }, change to { $other }
wrong = { $input }: { $error }
not-yet = No answer yet:
link = Link with these inputs
