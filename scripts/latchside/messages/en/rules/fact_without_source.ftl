rule = A fact names its source, or is marked common practice, typical or on the label.
