"""A condition can be met, and counts where it is."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.rules.rule import Rule

CODE = "never-met"


def check(library: Library) -> Iterator[Finding]:
    """Kinds that a condition names are among the openings of its device; a weight stands beside a condition."""
    for device in library.of("device"):
        for name in ("suits", "avoid"):
            for index, entry in enumerate(device[name]):
                for mark in ("weight", "rules_out"):
                    if mark in entry and "when" not in entry:
                        yield device.finding(
                            CODE, (name, index, mark), f"{mark} without when", "a condition that it counts for",
                            "Say under when what has to hold, or take it out.",
                        )  # fmt: skip
                for number, test in enumerate(entry.get("when", ())):
                    for at, word in enumerate(test.get("is", ()) if test["field"] == "kind" else ()):
                        if word in library.schemas.words("opening") and word not in device["openings"]:
                            yield device.finding(
                                CODE, (name, index, "when", number, "is", at),
                                f"{word}, on which {device.id} is not used", "a kind that stands under openings",
                                "Add it to openings, or drop it here.",
                            )  # fmt: skip


RULE = Rule(CODE, check)
