"""`python -m latchside.cli` is the command `latchside`."""

from latchside.cli import main

main()
