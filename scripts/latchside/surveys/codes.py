"""No pack holds a code: what looks like one is kept out and reported, until `no_codes` says that it is none."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from latchside.library.codes import confirmed, looks_like_code, masked
from latchside.messages import Message, messages
from latchside.schemas.shape import Path, Shape

message = messages(__name__)
CODES = ("code-in-note", "code-in-name")
_NOTES = "notes"


def withhold(data: dict[str, Any], shape: Shape) -> Iterator[tuple[Path, str]]:
    """Put a sentence in the place of each note that looks like a code, and mask it in other texts.

    Gives the path of each such text, and the code of its finding. What `no_codes` names is left as it is.
    """
    for path, text, _ in shape.texts(data):
        if not looks_like_code(text) or confirmed(data, path):
            continue
        note = path[-1] == _NOTES
        into: Any = data
        for part in path[:-1]:
            into = into[part]
        into[path[-1]] = str(message("withheld")) if note else masked(text)
        yield path, CODES[0] if note else CODES[1]


def advice(path: Path, code: str) -> Message:
    """What to do about such a text."""
    of_opening = path[0] == "openings"
    field = ".".join(part for part in (path[2:] if of_opening else path) if isinstance(part, str))
    return message(code, field=field, of="opening" if of_opening else "survey")
