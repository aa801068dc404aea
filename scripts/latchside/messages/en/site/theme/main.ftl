find = Find
saved-copy = Saved copy
saved-copy-region = The saved copy
pocket-copy = Pocket copy: version { $version }, { $date }. For reading and printing.
for-region = Words and units for { $region }.

# The region, within that sentence.
north-america = North America
united-kingdom = the United Kingdom
continent = continental Europe
