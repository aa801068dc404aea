"""A term links by itself only where its words mean nothing else."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.rules.rule import Rule

CODE = "link-phrase"


def check(library: Library) -> Iterator[Finding]:
    """No term links by a verb of steps, as a word that stands alone."""
    verbs = library.schemas.documents["vocabulary.schema.json"]["$defs"]["step-verb"]["enum"]
    for term in library.of("term"):
        told = "links_as" in term.data
        for index, phrase in enumerate(term.listed("links_as") if told else (term.name,)):
            path = ("links_as", index) if told else ("name",)
            words = phrase.lower()
            if words in verbs or words.removesuffix("s") in verbs:
                yield term.finding(
                    CODE, path, f'"{phrase}", a verb of steps, as words that link', "words that mean nothing else",
                    "List under `links_as` the phrases in which it is this term, or [] for none.",
                )  # fmt: skip


RULE = Rule(CODE, check)
