on-label = { $value }, as on the label.
least-on-label = { $value } or more, as on the label.
most-on-label = { $value } or less, as on the label.
typical = Typical: { $values }.
by-device = goes by the device
by-layout = goes by the layout of resistors
in-short = { $value }, typical
