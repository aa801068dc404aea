"""One step, one command."""

from __future__ import annotations

import re
from collections.abc import Iterator

from latchside.findings import Finding, did_you_mean
from latchside.library import Library, Record
from latchside.library.commands import verb_of
from latchside.library.compiled import own_steps
from latchside.library.text import plain
from latchside.messages import messages
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

message = messages(__name__)
CODE = "one-command"
MOST_WORDS = 20


def check(library: Library) -> Iterator[Finding]:
    """Each command starts with a known verb, is one sentence, and is short."""
    verbs = library.schemas.documents[VOCABULARY]["$defs"]["step-verb"]["enum"]
    for record, path, text in _commands(library):
        yield from _problems(record, path, text, verbs)


def _commands(library: Library) -> Iterator[tuple[Record, tuple[str | int, ...], str]]:
    for procedure in library.of("procedure"):
        for path, step in own_steps(procedure):
            yield procedure, (*path, "do"), step["do"]
    for fault in library.of("fault"):
        for i, one in enumerate(fault["checks"]):
            yield fault, ("checks", i, "do"), one["do"]
        for i, cause in enumerate(fault["causes"]):
            for j, text in enumerate(cause["remedy"]["do"]):
                yield fault, ("causes", i, "remedy", "do", j), text
    for caution in library.of("caution"):
        for i, text in enumerate(caution["avoid"]):
            yield caution, ("avoid", i), text


def _problems(record: Record, path: tuple[str | int, ...], text: str, verbs: list[str]) -> Iterator[Finding]:
    first, read = verb_of(text), plain(text)
    if first not in verbs:
        yield record.finding(CODE, path, *message.finding("no-verb", word=first, hint=did_you_mean(first, verbs)))
    if len(read.split()) > MOST_WORDS:
        yield record.finding(CODE, path, *message.finding("too-long", count=len(read.split()), most=MOST_WORDS))
    if re.search(r"\band then\b|;|[.!?] +\S", read):
        yield record.finding(CODE, path, *message.finding("several"))


RULE = Rule(CODE, check)
