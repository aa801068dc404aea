not-utf-8 =
    .expected = text in UTF-8
    .action = Save it as UTF-8; a spreadsheet calls it "CSV UTF-8".
damaged = damaged UTF-16
other-byte = byte { $byte }, which is not UTF-8
zero-bytes = bytes of zero, as in UTF-16 without its mark or in a file that is no text

broken-json =
    .expected = valid JSON
    .action = Save the survey again; this copy is damaged.
no-json = no JSON: { $error }
unreadable-json = no JSON that can be read
not-a-number = { $text }, which is no number
duplicate-key =
    .found = { $key } a second time
    .expected = each key once
    .action = Merge the two, or rename one. Until then the last one counts.
