"""Openings of a job are told apart by their ids."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "repeated-opening"


def check(library: Library) -> Iterator[Finding]:
    """No two openings of a job have the same id."""
    for record in library.of("job"):
        first: dict[str, int] = {}
        for index, opening in enumerate(record["openings"]):
            before = first.setdefault(opening["id"], index)
            if before != index:
                line = record.raw.place("openings", before, "id").line
                problem = message.finding("used", id=opening["id"], line=str(line))
                yield record.finding(CODE, ("openings", index, "id"), *problem)


RULE = Rule(CODE, check)
