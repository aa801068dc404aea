rule = A record's id is its file name without .yaml.
