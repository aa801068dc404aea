"""Ids inside a record, and aliases across records, are each used once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.compiled import own_steps
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "repeated-id"
_Path = tuple[str | int, ...]


def check(library: Library) -> Iterator[Finding]:
    """No two things of one sort share an id."""
    for record in library:
        yield from _within(record)
    for kind in library.records.values():
        taken = {one["id"]: one for one in kind.values()}
        for record in kind.values():
            for index, alias in enumerate(record.listed("aliases")):
                if alias in taken:
                    problem = message.finding("taken", id=alias, file=taken[alias].raw.file)
                    yield record.finding(CODE, ("aliases", index), *problem)
                taken.setdefault(alias, record)


def _within(record: Record) -> Iterator[Finding]:
    if record.kind.id == "procedure":
        yield from _once(record, own_steps(record))
        yield from _once(record, ((("steps", i), group) for i, group in enumerate(record["steps"]) if "do" in group))
        return
    for name in ("parts", "inputs", "causes", "checks", "columns", "rows", "points"):
        listed = enumerate(record.listed(name))
        yield from _once(record, (((name, i), entry) for i, entry in listed if isinstance(entry, Mapping)))
    for i, check_ in enumerate(record.listed("checks")):
        yield from _once(record, ((("checks", i, "results", j), r) for j, r in enumerate(check_["results"])))
    yield from _once(
        record,
        (
            (("points", i, "items", j), item)
            for i, point in enumerate(record.listed("points"))
            for j, item in enumerate(point["items"])
        ),
    )


def _once(record: Record, entries: Iterator[tuple[_Path, Mapping[str, Any]]]) -> Iterator[Finding]:
    seen: set[str] = set()
    for path, entry in entries:
        if entry.get("id") in seen:
            yield record.finding(CODE, (*path, "id"), *message.finding("used-above", id=entry["id"]))
        seen.add(entry.get("id", ""))


RULE = Rule(CODE, check)
