found = found
in-vain = in vain
cause = fault / cause (device)
passed-on = { $fault }: passed on
unknown = faults or causes that this library does not hold
nothing = These records hold no guided run of a fault.
