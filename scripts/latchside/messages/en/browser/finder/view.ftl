ask = What do you see, have or need?
close = Close
answers = Found
