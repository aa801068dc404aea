"""A result says a value or a state."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.text import plain
from latchside.rules.rule import Rule

CODE = "empty-result"


def check(library: Library) -> Iterator[Finding]:
    """No result, state, expectation or proof is only a word such as OK."""
    empty = set(library.schemas.documents["vocabulary.schema.json"]["$defs"]["empty-result"]["enum"])
    for record in library:
        for path, text, _ in library.texts(record):
            if path[-1] not in ("result", "state", "expect", "proof", "shows"):
                continue
            word = plain(text).strip(" .!").lower()
            if word.removeprefix("is ").removeprefix("it is ") in empty:
                yield record.finding(
                    CODE, path, f'"{text}" as {path[-1]}', "a value or a state, such as: the zone shows closed",
                    "Say what is seen.",
                )  # fmt: skip


RULE = Rule(CODE, check)
