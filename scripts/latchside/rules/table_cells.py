"""A table's rows fit its columns."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding, did_you_mean
from latchside.library import Library
from latchside.rules.rule import Rule

CODE = "table-cells"


def check(library: Library) -> Iterator[Finding]:
    """Each row has each column's cell, no other, and a number alone only under a column with a unit."""
    for table in library.of("table"):
        columns = {column["id"]: column for column in table["columns"]}
        for index, row in enumerate(table["rows"]):
            path = ("rows", index, "cells")
            for name, cell in row["cells"].items():
                if name not in columns:
                    yield table.finding(
                        CODE, (*path, name), f"a cell {name}", f"a column id.{did_you_mean(name, columns)}",
                        "Correct the id, or add the column.",
                    )  # fmt: skip
                elif isinstance(cell, int | float) and "unit" not in columns[name]:
                    yield table.finding(
                        CODE, (*path, name), f"the number {cell} under a column without unit", "a unit for the column",
                        "Add unit to the column (count for a number without one).",
                    )  # fmt: skip
            for name in columns:
                if name not in row["cells"]:
                    yield table.finding(
                        CODE, path, f"no cell for {name}", "a cell for each column (not stated, if it is not)",
                        f"Add {name}.",
                    )  # fmt: skip


RULE = Rule(CODE, check)
