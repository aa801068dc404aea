rule = No text asks for a password or a code to be written down.

on-paper =
    .found = a text that puts a password or a code on paper
    .expected = a text that leaves it unwritten
    .action = Say who speaks or enters it themselves, or say that it is not written down.
