"""Every drawing is shown somewhere."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "drawing-unused"


def check(library: Library) -> Iterator[Finding]:
    """Each drawing is named by a record or a hand-written page, or is that of a kind of opening.

    Nothing is said while some record cannot be read: it might name any of them.
    """
    if library.unread:
        return
    named = {f"opening-{kind}" for kind in library.schemas.words("opening")}
    named |= {link.id for link in library.links if link.kind == "drawing"}
    named |= {id_ for kind, id_ in library.mentioned if kind == "drawing"}
    shown = {library.pictures[id_].file for id_ in named & library.pictures.keys()}
    for picture in library.drawings.values():
        if picture.file not in shown:
            yield picture.finding(CODE, picture.root, *message.finding("unused", drawing=picture.id))


RULE = Rule(CODE, check)
