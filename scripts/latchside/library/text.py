"""The few references that a text may hold. Everything else in a text is only text.

[[kind/id]]  [[kind/id|words]]  [[procedure/id#step]]   a link to a record, or to a step
[[=name]]                                              a value of the same record
[[=device/name]]                                       a value of the device at hand
[[=kind/id/name]]                                      a value of another record
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

_ID = r"[a-z][a-z0-9]*(?:-[a-z0-9]+)*"
_REFERENCE = re.compile(
    rf"\[\[(?:=(?P<value>{_ID}(?:/{_ID}){{0,2}})"
    rf"|(?P<kind>{_ID})/(?P<id>{_ID})(?:\#(?P<step>{_ID}))?(?:\|(?P<words>[^\[\]|]+))?)\]\]"
)


@dataclass(frozen=True)
class Words:
    """Plain text."""

    text: str


@dataclass(frozen=True)
class RecordLink:
    """A link to a record, or to a step of a procedure; `words` are shown in place of its name."""

    kind: str
    id: str
    step: str | None
    words: str | None


@dataclass(frozen=True)
class ValueLink:
    """A value by reference. `owner` is None for the record itself, ("device", None) for the device at hand."""

    owner: tuple[str, str | None] | None
    name: str


Part = Words | RecordLink | ValueLink


@lru_cache(maxsize=50_000)
def text_parts(text: str) -> tuple[Part, ...]:
    """The parts of a text in order; a bracket that is no reference stays text. Rules and pages ask again and again."""
    return tuple(_parts(text)) if "[[" in text else (Words(text),)


def _parts(text: str) -> Iterator[Part]:
    end = 0
    for match in _REFERENCE.finditer(text):
        if match.start() > end:
            yield Words(text[end : match.start()])
        end = match.end()
        if match["value"]:
            *owner, name = match["value"].split("/")
            yield ValueLink((owner[0], owner[1] if len(owner) > 1 else None) if owner else None, name)
        else:
            yield RecordLink(match["kind"], match["id"], match["step"], match["words"])
    if end < len(text):
        yield Words(text[end:])


def written(text: str) -> Iterator[str]:
    """What the author wrote for the reader: the text between references, and the words shown for them."""
    for part in text_parts(text):
        if isinstance(part, Words):
            yield part.text
        elif isinstance(part, RecordLink) and part.words:
            yield part.words


def plain(text: str) -> str:
    """The author's own words, references taken out: what rules about words look at."""
    return "".join(written(text))
