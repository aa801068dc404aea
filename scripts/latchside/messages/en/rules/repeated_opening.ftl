rule = Ids of the openings of a job are each used once.
