rule = Every reference names a record, step, value, drawing or card that exists.

no-such-kind =
    .found = { $reference }, which does not exist
    .expected = a kind: { $kinds }.{ $hint }
    .action = Correct the id, or write what it names.

no-such-record =
    .found = { $reference }, which does not exist
    .expected = an existing { $kind }.{ $hint }
    .action = Correct the id, or write what it names.

no-such-step =
    .found = step { $step }, which does not exist
    .expected = a step of { $reference }.{ $hint }
    .action = Correct the id, or write what it names.

no-such-value =
    .found = the value { $value }, which does not exist
    .expected = a name under values.{ $hint }
    .action = Correct the name, or add the value.

no-such-form =
    .found = { $form }, which is no form of the word
    .expected = { $forms }, or the same in another region
    .action = Use one of its forms, or add the form to the word.

# The value of the device at hand, which a device states and this record does not.
of-device = {" "}Did you mean [[=device/{ $value }]]?
