rule = The traits of a profile agree with its first input and with what it says of radio.

first-input =
    .found = { $input } as the first input, with reports: { $reports }
    .expected = the common case first: an input with kind: { $kind }
    .action = Put that input first, or correct the traits.

senses =
    .found = senses: { $senses } with reports: { $reports }
    .expected = senses: loop and reports: loop-by-radio together, or neither
    .action = Say what the device itself senses, or that it reports the loop of a contact.

radio-of-a-wired =
    .found = words on radio in a device that reports { $reports }
    .expected = radio: none where it reports by cable, and words on radio and check-in where it reports by radio
    .action = Correct radio, or the traits.

no-radio =
    .found = radio: none in a device that reports { $reports }
    .expected = radio: none where it reports by cable, and words on radio and check-in where it reports by radio
    .action = Correct radio, or the traits.
