rule = Work inside a control unit has the caution for mains before it.
