"""Text of a record in plain words, its references taken out: for sheets, tables and files that have no links."""

from __future__ import annotations

from latchside.figures.words import in_words
from latchside.library.model import Library, Record
from latchside.library.quantity import quantity
from latchside.library.regions import told
from latchside.library.text import Part, RecordLink, Words, text_parts
from latchside.messages import within


def plain_text(text: str, record: Record, library: Library) -> str:
    """The text with values in figures and links by the words or the name that a reader would see."""
    return "".join(_said(part, record, library) for part in text_parts(text))


def _said(part: Part, record: Record, library: Library) -> str:
    if isinstance(part, Words):
        return part.text
    if isinstance(part, RecordLink):
        target = library.find(part.kind, part.id)
        return told(part, target) or (_name(target) if target else part.id.replace("-", " "))
    kind, id_ = part.owner or (None, None)
    owner = library.find(kind, id_) if kind and id_ else record
    values = owner.get("values", {}) if owner is not None else {}
    return in_words(quantity(values[part.name])) if part.name in values else part.name.replace("-", " ")


def _name(record: Record) -> str:
    """A term stands in a sentence as a word of it; other names are names."""
    return within(record.name) if record.kind.id in ("term", "device", "procedure") else record.name
