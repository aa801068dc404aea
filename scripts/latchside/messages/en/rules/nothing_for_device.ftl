rule = Each procedure, checklist and fault that a device lists holds something for it.

no-step =
    .found = { $record }, which has no step for this device
    .expected = a record with a step for its traits
    .action = Take it out, or write the steps in { $file }.

no-item =
    .found = { $record }, which has no item for this device
    .expected = a record with an item for its traits
    .action = Take it out, or write the items in { $file }.

no-cause =
    .found = { $record }, which has no cause for this device
    .expected = a record with a cause for its traits
    .action = Take it out, or write the causes in { $file }.
