"""A checklist is short, and what matters most comes first."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.text import plain
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "pause-point"
MOST_WORDS = 12


def check(library: Library) -> Iterator[Finding]:
    """Critical items first in each pause point, one at least in the list, each item in at most 12 words."""
    for record in library.of("checklist"):
        if not any(item.get("critical") for point in record["points"] for item in point["items"]):
            yield record.finding(CODE, ("points",), *message.finding("none-critical"))
        for i, point in enumerate(record["points"]):
            ordinary = False
            for j, item in enumerate(point["items"]):
                path = ("points", i, "items", j)
                if item.get("critical") and ordinary:
                    yield record.finding(CODE, path, *message.finding("critical-later"))
                ordinary = ordinary or not item.get("critical")
                words = len(f"{plain(item['subject'])} {plain(item['state'])}".split())
                if words > MOST_WORDS:
                    yield record.finding(CODE, path, *message.finding("too-long", count=words, most=MOST_WORDS))


RULE = Rule(CODE, check)
