rule = A text asks a device only for values that its profile states.
