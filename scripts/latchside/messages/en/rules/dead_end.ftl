rule = Every result of a check leaves causes, another fault or the escalation, and every cause is reached.
