rule = The traits of a profile agree with its first input and with what it says of radio.
