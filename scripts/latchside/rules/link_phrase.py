"""A term links by itself only where its words mean nothing else."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

message = messages(__name__)
CODE = "link-phrase"


def check(library: Library) -> Iterator[Finding]:
    """No term links by a verb of steps, as a word that stands alone."""
    verbs = library.schemas.documents[VOCABULARY]["$defs"]["step-verb"]["enum"]
    for term in library.of("term"):
        listed = "links_as" in term.data
        for index, phrase in enumerate(term.listed("links_as") if listed else (term.name,)):
            path = ("links_as", index) if listed else ("name",)
            words = phrase.lower()
            if words in verbs or words.removesuffix("s") in verbs:
                yield term.finding(CODE, path, *message.finding("verb", phrase=phrase))


RULE = Rule(CODE, check)
