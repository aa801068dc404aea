doors = At the doors and windows
loops = At the loops
radio = By radio

as-named = as on the left
