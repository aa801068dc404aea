"""A check is there to find a cause."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.rules.rule import Rule

CODE = "no-cause-left"


def check(library: Library) -> Iterator[Finding]:
    """Some result of each check leaves a cause or leads to another fault."""
    for fault in library.of("fault"):
        for index, one in enumerate(fault["checks"]):
            if not any("leaves" in result or "go" in result for result in one["results"]):
                yield fault.finding(
                    CODE, ("checks", index), f"the check {one['id']}, which leaves no cause whatever it shows",
                    "a result with leaves or go", "Say which causes each result leaves, or drop the check.",
                )  # fmt: skip


RULE = Rule(CODE, check)
