"""Nobody's code is written down."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.codes import confirmed, looks_like_code
from latchside.rules.rule import Rule

CODE = "code-in-notes"


def check(library: Library) -> Iterator[Finding]:
    """No text of a job looks as if it held the code of a user, of an installation or of a key safe."""
    for record in library.of("job"):
        for path, text, _ in library.texts(record):
            if looks_like_code(text) and not confirmed(record.data, path):
                yield record.finding(
                    CODE, path, f"{'.'.join(map(str, path))}, which looks as if it held a code", "a text without codes",
                    "Take the code out. If it is none, name the field under `no_codes` of its opening or of the job.",
                )  # fmt: skip


RULE = Rule(CODE, check)
