no-device = Device not chosen
found = { $item }: { $found }
taken-off = { $opening }: planned, and taken off the list.
added = { $opening }: not in the plan. Fitted: { $device }.
other = { $opening }: planned { $planned }, fitted { $fitted }.
at = { $opening }: { $found }
