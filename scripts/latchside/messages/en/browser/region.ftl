choose = Words and units of your region
north-america = North America: arm, bypass; inches
united-kingdom = United Kingdom: set, omit; millimetres
continent = Continental Europe: set, inhibit; millimetres
north-america-short = N. America
united-kingdom-short = UK
continent-short = Europe
