"""No pack holds a code: what looks like one is kept out of it, and said, until somebody says that it is none."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from latchside.library.codes import confirmed, looks_like_code, masked
from latchside.schemas.shape import Path, Shape

WITHHELD = "(Kept out of the pack: it looks as if it held a code. It stands in the survey.)"
CODES = ("code-in-note", "code-in-name")
_NOTES = "notes"


def withhold(data: dict[str, Any], shape: Shape) -> Iterator[tuple[Path, str]]:
    """Put the words above in the place of each note that looks like a code, and mask it in other texts.

    Gives the path of each such text, and the code of its finding. What `no_codes` names is left as it is.
    """
    for path, text, _ in shape.texts(data):
        if not looks_like_code(text) or confirmed(data, path):
            continue
        note = path[-1] == _NOTES
        into: Any = data
        for part in path[:-1]:
            into = into[part]
        into[path[-1]] = WITHHELD if note else masked(text)
        yield path, CODES[0] if note else CODES[1]


def advice(path: Path, code: str) -> str:
    """What to do about such a text."""
    name = ".".join(part for part in (path[2:] if path[0] == "openings" else path) if isinstance(part, str))
    where = "of this opening" if path[0] == "openings" else "of the survey"
    kept = "Its words are" if code == CODES[0] else "Its digits are"
    return (
        f"{kept} kept out of the pack. Take the code out, tell it by word of mouth and have it changed. "
        f"If it is none, write {name} under `no_codes` {where}; the form asks."
    )
