"""A reading of a loop is said with the layout of resistors that it is for."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.text import ValueLink, text_parts
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "loop-layout"
_WORDS = ("resistor", "layout")


def check(library: Library) -> Iterator[Finding]:
    """A text that gives the loop reading of a device names the layout or the resistors in it."""
    readings = set(library.schemas.layouts())
    for record in library:
        for path, text, sort in library.texts(record):
            if sort != "prose" or any(word in text.lower() for word in _WORDS):
                continue
            for part in text_parts(text):
                if isinstance(part, ValueLink) and part.name in readings and _of_device(record, part):
                    yield record.finding(CODE, path, *message.finding("no-layout", value=part.name))


def _of_device(record: Record, link: ValueLink) -> bool:
    return link.owner == ("device", None) or (link.owner is None and record.kind.id == "device")


RULE = Rule(CODE, check)
