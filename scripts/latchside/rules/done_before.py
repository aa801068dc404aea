"""What a procedure says was done before it is done before it."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.text import RecordLink, text_parts
from latchside.library.uses import procedures_at
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "done-before"


def check(library: Library) -> Iterator[Finding]:
    """A procedure named under `before` of another comes first with every device that lists both."""
    for device in library.of("device"):
        order = list(procedures_at(device))
        place = {id_: number for number, (_, id_) in reversed(list(enumerate(order)))}
        for number, (path, id_) in enumerate(order):
            for earlier in _before(library, id_):
                if place.get(earlier, number) > number:
                    yield device.finding(CODE, path, *message.finding("comes-later", procedure=id_, earlier=earlier))


def _before(library: Library, id_: str) -> Iterator[str]:
    """The procedures that a procedure names under `before`."""
    procedure = library.find("procedure", id_)
    stated = procedure["before"] if procedure else ()
    for text in stated if isinstance(stated, tuple) else ():
        for part in text_parts(text):
            # a link to one step says how, and not that the whole procedure is done
            if isinstance(part, RecordLink) and part.kind == "procedure" and part.step is None:
                yield part.id


RULE = Rule(CODE, check)
