rule = A notice is about damage or disturbance; a hazard to people is a caution, warning or danger.
