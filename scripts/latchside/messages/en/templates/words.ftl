summary = Pages show the words and the units of your region. Choose it at the top of any page.
words = Words by region
north-america = North America
united-kingdom = United Kingdom
continent = Continental Europe
meaning = Meaning
