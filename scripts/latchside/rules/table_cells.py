"""A table's rows fit its columns."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding, did_you_mean
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "table-cells"


def check(library: Library) -> Iterator[Finding]:
    """Each row has each column's cell, no other, and a number alone only under a column with a unit."""
    for table in library.of("table"):
        columns = {column["id"]: column for column in table["columns"]}
        for index, row in enumerate(table["rows"]):
            path = ("rows", index, "cells")
            for name, cell in row["cells"].items():
                if name not in columns:
                    problem = message.finding("no-such-column", cell=name, hint=did_you_mean(name, columns))
                    yield table.finding(CODE, (*path, name), *problem)
                elif isinstance(cell, int | float) and "unit" not in columns[name]:
                    yield table.finding(CODE, (*path, name), *message.finding("no-unit", cell=str(cell)))
            for name in columns:
                if name not in row["cells"]:
                    yield table.finding(CODE, path, *message.finding("no-cell", column=name))


RULE = Rule(CODE, check)
