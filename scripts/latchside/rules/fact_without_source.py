"""Every fact says where it comes from."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.walk import mappings_with
from latchside.messages import messages
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

message = messages(__name__)
CODE = "fact-without-source"


def check(library: Library) -> Iterator[Finding]:
    """A standard, handbook or from-memory status names its source; common practice has none."""
    sourced = library.schemas.documents[VOCABULARY]["$defs"]["status"]["x-source"]
    for record in library:
        for path, entry in mappings_with(frozenset({"status"}), record.data):
            status, source = entry["status"], entry.get("source")
            if sourced.get(status) is True and not source:
                yield record.finding(CODE, path, *message.finding("no-source", status=status))
            if sourced.get(status) is False and source:
                yield record.finding(CODE, path, *message.finding("source", status=status, source=source))


RULE = Rule(CODE, check)
