"""Words come from the terms list."""

from __future__ import annotations

import re
from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.text import written
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "house-word"
_FREE = frozenset({"north_america", "europe", "instead_of", "says", "also_called"})
_BY_REGION = re.compile(r"\[\[word/[^\]]*\]\]")
"""A word that each region says in its own way, which the page chooses."""


def check(library: Library) -> Iterator[Finding]:
    """A word that a term replaces is not used in our own text."""
    instead = {word.lower(): term for term in library.of("term") for word in term.listed("instead_of")}
    if not instead:
        return
    words = "|".join(re.escape(word) for word in sorted(instead, key=len, reverse=True))
    pattern = re.compile(rf"(?<![\w-])({words})s?(?![\w-])", re.IGNORECASE)
    for record in library:
        for path, text, _ in library.texts(record):
            if record.kind.id in ("source", "term", "table", "word") or not _FREE.isdisjoint(path):
                continue
            for passage in written(_BY_REGION.sub("", text)):
                for match in pattern.finditer(passage):
                    term = instead[match[1].lower()]
                    problem = message.finding("replaced-word", word=match[0], instead=term.name, term=term.id)
                    yield record.finding(CODE, path, *problem)


RULE = Rule(CODE, check)
