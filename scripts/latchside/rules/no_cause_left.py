"""A check is there to find a cause."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "no-cause-left"


def check(library: Library) -> Iterator[Finding]:
    """Some result of each check leaves a cause or leads to another fault."""
    for fault in library.of("fault"):
        for index, one in enumerate(fault["checks"]):
            if not any("leaves" in result or "go" in result for result in one["results"]):
                yield fault.finding(CODE, ("checks", index), *message.finding("leaves-none", check=one["id"]))


RULE = Rule(CODE, check)
