"""The figures of one opening, by what they are about: magnet, fixing, loop, radio, cell and ladder."""
