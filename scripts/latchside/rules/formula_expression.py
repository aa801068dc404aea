"""An expression of a figure is arithmetic and nothing else."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.figures.program import read_program
from latchside.findings import Finding
from latchside.library import Library
from latchside.rules.rule import Rule

CODE = "formula-expression"


def check(library: Library) -> Iterator[Finding]:
    """Every expression is read through the allow-list, uses declared names, and gives what its place needs."""
    for record in library.of("formula"):
        for path, error in read_program(record.data).errors:
            yield record.finding(
                CODE, path, error.found, error.expected, "Write it with what is allowed; the schema lists it."
            )


RULE = Rule(CODE, check)
