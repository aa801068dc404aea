rule = A pause point puts critical items first and says each item in at most twelve words.
