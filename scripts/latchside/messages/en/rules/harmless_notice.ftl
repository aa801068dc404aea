rule = A notice is about damage or disturbance; a hazard to people is a caution, warning or danger.

injury =
    .found = "{ $word }" in a notice
    .expected = damage or disturbance only
    .action = Raise the level, or say what is damaged.
