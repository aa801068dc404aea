"""Real sites stay out of the library."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "job-not-invented"


def check(library: Library) -> Iterator[Finding]:
    """A job kept with the library says that it is invented, and for which day it is planned."""
    for record in library.of("job"):
        if record.get("invented") is not True:
            yield record.finding(CODE, (), *message.finding("not-invented"))
        if "surveyed" not in record.data:
            yield record.finding(CODE, (), *message.finding("no-day"))


RULE = Rule(CODE, check)
