rule = A profile states the values and parts that its traits ask for, and none that do not fit.
