"""Every fact says where it comes from."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.walk import mappings_with
from latchside.rules.rule import Rule

CODE = "fact-without-source"
_NEEDS = ("standard", "handbook", "from memory")
_REFUSES = ("common practice", "typical", "on the label")


def check(library: Library) -> Iterator[Finding]:
    """A standard, handbook or from-memory status names its source; common practice has none."""
    for record in library:
        for path, entry in mappings_with(frozenset({"status"}), record.data):
            status, source = entry["status"], entry.get("source")
            if status in _NEEDS and not source:
                yield record.finding(
                    CODE, path, f"the status {status} without a source", "source: the id of a source record",
                    "Name the source, or mark it common practice if it is trade habit.",
                )  # fmt: skip
            if status in _REFUSES and source:
                yield record.finding(
                    CODE, path, f"the status {status} with the source {source}", f"no source beside {status}",
                    "Drop the source, or correct the status.",
                )  # fmt: skip


RULE = Rule(CODE, check)
