"""An expression of a figure is arithmetic and nothing else."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.figures.program import read_program
from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "formula-expression"


def check(library: Library) -> Iterator[Finding]:
    """Every expression is read through the allow-list, uses declared names, and gives what its place needs."""
    for record in library.of("formula"):
        for path, error in read_program(record.data).errors:
            yield record.finding(CODE, path, *message.finding("refused", found=error.found, expected=error.expected))


RULE = Rule(CODE, check)
