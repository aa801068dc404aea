rule = A device lists what its traits ask for, and nothing that does not fit them.
