"""Marked blanks are filled."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.new import BLANK, BLANK_ID
from latchside.rules.rule import Rule

CODE = "blank-left"


def check(library: Library) -> Iterator[Finding]:
    """No text is still the blank that a new record starts with."""
    for record in library:
        for path, text, _ in library.texts(record):
            if text in (BLANK, BLANK_ID):
                yield record.finding(CODE, path, f"the blank {BLANK}", "your text", "Fill it in, or delete the key.")


RULE = Rule(CODE, check)
