rule = A step is one command: a known verb first, one sentence, at most twenty words.
