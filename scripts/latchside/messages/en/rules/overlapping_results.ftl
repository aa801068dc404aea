rule = Likelihoods are for causes a result leaves, add up to one, and no two results say the same.
