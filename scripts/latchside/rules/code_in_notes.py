"""Nobody's code is written down."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.codes import confirmed, looks_like_code
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "code-in-notes"


def check(library: Library) -> Iterator[Finding]:
    """No text of a job looks as if it held the code of a user, of an installation or of a key safe."""
    for record in library.of("job"):
        for path, text, _ in library.texts(record):
            if looks_like_code(text) and not confirmed(record.data, path):
                yield record.finding(CODE, path, *message.finding("code", field=".".join(map(str, path))))


RULE = Rule(CODE, check)
