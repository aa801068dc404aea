as-planned = as planned
