rule = Every procedure that a job is planned with has its minutes, at best, as a rule and at worst.
