"""Real sites stay out of the library."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.rules.rule import Rule

CODE = "job-not-invented"


def check(library: Library) -> Iterator[Finding]:
    """A job kept with the library says that it is invented, and for which day it is planned."""
    for record in library.of("job"):
        if record.get("invented") is not True:
            yield record.finding(
                CODE, (), "a job that is not marked as invented", "invented: true, where site and people are made up",
                "Mark it if it is; keep the survey of a real site in the folder surveys/.",
            )  # fmt: skip
        if "surveyed" not in record.data:
            yield record.finding(
                CODE, (), "an invented job without a day", "surveyed: the day it is planned for", "Add surveyed."
            )


RULE = Rule(CODE, check)
