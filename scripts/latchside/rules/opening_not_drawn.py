"""Every kind of opening is drawn."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.kinds import DRAWINGS
from latchside.library import Library
from latchside.rules.rule import Rule

CODE = "opening-not-drawn"


def check(library: Library) -> Iterator[Finding]:
    """Each kind of opening that a device is for has its drawing, `opening-` and the kind: job sheets show it."""
    for device in library.of("device"):
        for index, kind in enumerate(device["openings"]):
            id_ = f"opening-{kind}"
            if id_ not in library.drawings and ("drawing", id_) not in library.unsound:
                yield device.finding(
                    CODE, ("openings", index), f"{kind}, which is not drawn", f"{DRAWINGS}/{id_}.svg",
                    "Draw where magnet and sensor go on it.",
                )  # fmt: skip


RULE = Rule(CODE, check)
