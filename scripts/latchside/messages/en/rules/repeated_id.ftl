rule = Ids of steps, items, causes and the like are each used once; an alias is nobody else's id.
