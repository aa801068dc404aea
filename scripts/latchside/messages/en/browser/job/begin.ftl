not-kept = this browser keeps nothing here ({ $why }). Make the pack below and save the visit’s file from it.
started = Started from the survey, with what its plan expects at each opening.
there = A visit of this job was on this device already. Nothing of it was changed.
