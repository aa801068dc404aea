summary = The words of the trade, with those used in North America and in Europe side by side.
terms = Terms
word = Word
meaning = What it means
north-america = North America
europe = Europe
see = See { $terms }.
on = On: { $pages }
