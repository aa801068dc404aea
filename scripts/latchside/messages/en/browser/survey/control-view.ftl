choose = Choose
minus = Minus
