rule = Our own text uses the words of the terms list; quoted words and both continents' words are free.
