rule = Our own text uses the words of the terms list; quoted words and both continents' words are free.

replaced-word =
    .found = "{ $word }"
    .expected = "{ $instead }", the word of the terms list
    .action = Use the word, or link to the term as [[term/{ $term }]].
