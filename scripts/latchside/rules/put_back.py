"""Protection that a check takes off is put back."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

message = messages(__name__)
CODE = "put-back"


def check(library: Library) -> Iterator[Finding]:
    """A check that needs protection off says how it is put back."""
    touch = library.schemas.documents[VOCABULARY]["$defs"]["need"]["x-touch"]
    words = library.schemas.words("need")
    for fault in library.of("fault"):
        for index, one in enumerate(fault["checks"]):
            for number, need in enumerate(one["needs"]):
                if touch[need] and "restore" not in one:
                    problem = message.finding("no-restore", need=words[need])
                    yield fault.finding(CODE, ("checks", index, "needs", number), *problem)


RULE = Rule(CODE, check)
