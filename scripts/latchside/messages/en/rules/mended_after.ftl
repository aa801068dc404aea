rule = What a remedy waits for is a cause of the same fault that is repaired on the visit, and never itself.
