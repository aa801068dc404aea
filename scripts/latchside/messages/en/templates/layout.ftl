where = Where you are
home = Home
