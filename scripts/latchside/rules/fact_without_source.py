"""Every fact says where it comes from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding
from latchside.library import Library
from latchside.rules.rule import Rule

CODE = "fact-without-source"
_NEEDS = ("standard", "handbook", "from memory")
_REFUSES = ("common practice", "typical", "on the label")
_Path = tuple[str | int, ...]


def check(library: Library) -> Iterator[Finding]:
    """A standard, handbook or from-memory status names its source; common practice has none."""
    for record in library:
        for path, entry in _stated(record.data, ()):
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


def _stated(value: Any, path: _Path) -> Iterator[tuple[_Path, Mapping[str, Any]]]:
    if isinstance(value, Mapping):
        if isinstance(value.get("status"), str):
            yield path, value
        for key, below in value.items():
            yield from _stated(below, (*path, key))
    elif isinstance(value, tuple):
        for index, below in enumerate(value):
            yield from _stated(below, (*path, index))


RULE = Rule(CODE, "A fact names its source, or is marked common practice, typical or on the label.", check)
