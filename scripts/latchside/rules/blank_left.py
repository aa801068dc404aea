"""Marked blanks are filled."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.blanks import blanks, is_blank, named
from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "blank-left"


def check(library: Library) -> Iterator[Finding]:
    """Nothing is still a blank that a new record or drawing starts with, whether the record is sound or not."""
    for raw in (*(record.raw for record in library), *library.broken):
        for path, text in blanks(raw.value):
            where = ".".join(map(str, path))
            own = named(text)
            about = message.finding("own", id=own, where=where) if own else _blank(text, where)
            yield Finding(raw.file, raw.place(*path), CODE, *about)
    for picture in library.drawings.values():
        for element in picture.root.all():
            if any(is_blank(one) for one in element.inside):
                yield picture.finding(CODE, element, *_blank(element.words(), element.name))


def _blank(text: str, where: str) -> tuple[str, str, str]:
    return message.finding("blank", blank=text, where=where)


RULE = Rule(CODE, check)
