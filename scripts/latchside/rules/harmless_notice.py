"""A notice is not about injury."""

from __future__ import annotations

import re
from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.text import plain
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "harmless-notice"
_INJURY = re.compile(
    r"\b(injur\w*|wound\w*|burns?|death|kill\w*|hurt\w*|blinded|blinding|blindness|fractur\w*|suffocat\w*)\b",
    re.IGNORECASE,
)


def check(library: Library) -> Iterator[Finding]:
    """A caution of the level notice says nothing of injury (ANSI Z535.6: notice is for damage)."""
    for caution in library.of("caution"):
        for name in ("hazard", "consequence") if caution["level"] == "notice" else ():
            match = _INJURY.search(plain(caution[name]))
            if match:
                yield caution.finding(CODE, (name,), *message.finding("injury", word=match[0]))


RULE = Rule(CODE, check)
