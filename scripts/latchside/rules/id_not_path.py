"""Path and id agree."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "id-not-path"


def check(library: Library) -> Iterator[Finding]:
    """The id inside a record is its file name without `.yaml`."""
    for record in library:
        if record["id"] != record.id:
            problem = message.finding("other-id", id=record["id"], file=record.raw.file, name=record.id)
            yield record.finding(CODE, ("id",), *problem)


RULE = Rule(CODE, check)
