rule = The values of a device do not contradict each other.
