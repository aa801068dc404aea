"""A condition can be met, and counts where it is."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "never-met"


def check(library: Library) -> Iterator[Finding]:
    """Kinds that a condition names are among the openings of its device; a weight stands beside a condition."""
    for device in library.of("device"):
        for name in ("suits", "avoid"):
            for index, entry in enumerate(device[name]):
                for mark in ("weight", "rules_out"):
                    if mark in entry and "when" not in entry:
                        yield device.finding(CODE, (name, index, mark), *message.finding("no-condition", mark=mark))
                for number, test in enumerate(entry.get("when", ())):
                    for at, word in enumerate(test.get("is", ()) if test["field"] == "kind" else ()):
                        if word in library.schemas.words("opening") and word not in device["openings"]:
                            problem = message.finding("kind-not-listed", kind=word, device=device.id)
                            yield device.finding(CODE, (name, index, "when", number, "is", at), *problem)


RULE = Rule(CODE, check)
