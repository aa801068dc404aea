"""A part that sits in a hole is never chosen where no hole may be made."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.traits import traits
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "hole-ruled-out"
_NO_HOLE = {"fire-rated": "yes", "escape": "yes", "drill": "no"}
"""The answers of a survey that forbid a new hole."""


def check(library: Library) -> Iterator[Finding]:
    """Each device of which a part is drilled is ruled out by each answer that forbids a hole."""
    for device in library.of("device"):
        if not traits(device).drilled:
            continue
        for field, answer in _NO_HOLE.items():
            if not _rules_out(device, field, answer):
                yield device.finding(CODE, ("avoid",), *message.finding("not-ruled-out", field=field, answer=answer))


def _rules_out(device: Record, field: str, answer: str) -> bool:
    return any(
        test["field"] == field and answer in test.get("is", ())
        for one in device["avoid"]
        if one.get("rules_out")
        for test in one.get("when", ())
    )


RULE = Rule(CODE, check)
