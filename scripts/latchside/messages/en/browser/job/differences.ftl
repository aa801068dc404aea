# What is written into the survey; the lead reads it there.
fitted = Fitted on the visit of { $date }
defect = On { $date }: { $item }: { $found }
