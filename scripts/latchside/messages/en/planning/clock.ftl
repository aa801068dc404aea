procedures = { $names }.
