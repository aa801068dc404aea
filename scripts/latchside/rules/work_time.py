"""The plan of a job finds the minutes of every piece of work."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.blanks import is_blank
from latchside.findings import Finding
from latchside.library import Library
from latchside.library.uses import procedures_at
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "work-time"
TABLE = "work-times"
_PLANNED = frozenset({
    "prepare", "position", "wire", "power", "enrol", "set-up", "try", "fix", "prove", "hand-over",
})  # fmt: skip
"""The stages that the work of a job is made of, wherever a device lists what is done in them."""


def check(library: Library) -> Iterator[Finding]:
    """Each procedure that a job plans with has a row in the table of minutes, and each row is in order."""
    table = library.find("table", TABLE)
    if table is None:
        return
    rows = {row["id"] for row in table["rows"]}
    for device in library.of("device"):
        for path, id_ in procedures_at(device):
            if id_ not in rows and not _PLANNED.isdisjoint((path[1], _own_stage(id_, library))):
                yield device.finding(CODE, path, *message.finding("no-row", procedure=id_, file=table.raw.file))
    for index, row in enumerate(table["rows"]):
        figures = [row["cells"].get(one) for one in ("low", "usual", "high")]
        if any(map(is_blank, figures)):
            continue
        if not all(isinstance(one, int | float) for one in figures) or figures != sorted(figures):
            problem = message.finding("not-in-order", figures=", ".join(map(str, figures)))
            yield table.finding(CODE, ("rows", index, "cells"), *problem)


def _own_stage(procedure: str, library: Library) -> str:
    record = library.find("procedure", procedure)
    return str(record["stage"]) if record else ""


RULE = Rule(CODE, check)
