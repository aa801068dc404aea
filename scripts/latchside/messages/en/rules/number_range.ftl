rule = Limits stand the right way round, and a device value has a unit that fits its name.
