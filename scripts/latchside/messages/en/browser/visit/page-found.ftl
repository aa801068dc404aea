faults = Faults looked for
not-ended = Not ended yet.
at = { $opening }:
found = { $item }: { $findings }
