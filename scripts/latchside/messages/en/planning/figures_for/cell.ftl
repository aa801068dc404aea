name = Battery
change = change by { $day }, after { $after }
average = { $current } on average, { $years } at the most.
label = The label's limit comes first: { $life }.
too-short =
    It does not last from one yearly service to the next. Wire the opening, or order a device with a larger battery.
frost = Frost shortens it, by how much is not worked.
ceiling = A ceiling: a low-battery report wins over the day.
uses = Opened { $times } times a day, which nobody counted.
voltage = Battery, lowest during a report
voltage-of-type = Battery of { $nominal }, lowest during a report
