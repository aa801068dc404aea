on-label = as on the label
