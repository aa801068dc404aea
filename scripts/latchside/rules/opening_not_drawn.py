"""Every kind of opening is drawn."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.kinds import DRAWINGS
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "opening-not-drawn"


def check(library: Library) -> Iterator[Finding]:
    """Each kind of opening that a device is for has its drawing, `opening-` and the kind: job sheets show it."""
    for device in library.of("device"):
        for index, kind in enumerate(device["openings"]):
            id_ = f"opening-{kind}"
            if id_ not in library.drawings and ("drawing", id_) not in library.unsound:
                problem = message.finding("not-drawn", kind=kind, file=f"{DRAWINGS}/{id_}.svg")
                yield device.finding(CODE, ("openings", index), *problem)


RULE = Rule(CODE, check)
