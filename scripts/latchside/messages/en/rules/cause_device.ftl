rule = Each device that a cause or a check names lists the fault.

left-out =
    .found = { $device }, which the cause's only leaves out
    .expected = a device the cause is for
    .action = Add it to only, or drop it here.

no-such-device =
    .found = device/{ $device }, which does not exist
    .expected = an existing device.{ $hint }
    .action = Correct the id, or write what it names.

fault-not-listed =
    .found = { $device }, which does not list the fault { $fault }
    .expected = a device with { $fault } under faults
    .action = Add { $fault } to the faults of { $device }, or drop the device here.
