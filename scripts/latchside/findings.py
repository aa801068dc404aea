"""What a check has to say: one type for every problem, wherever it was found."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Literal, NamedTuple

from latchside.messages import messages

message = messages(__name__)

Level = Literal["error", "warning"]


class Place(NamedTuple):
    """A position in a file; line and column count from one."""

    line: int
    column: int


START = Place(1, 1)


def place_after(text: str) -> Place:
    """The place of the character that comes after `text`."""
    return Place(text.count("\n") + 1, len(text) - (text.rfind("\n") + 1) + 1)


@dataclass(frozen=True, order=True)
class Finding:
    """One problem: where it is, what was found, what is expected, and what to do next."""

    file: str
    place: Place
    code: str
    found: str
    expected: str
    action: str
    level: Level = "error"


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """` Did you mean "…"?` for the closest known word, to stand behind another sentence; or nothing."""
    close = get_close_matches(word, sorted(known), n=1, cutoff=0.6)
    return f" {message('did-you-mean', word=close[0])}" if close else ""


def quoted(value: object, limit: int = 60) -> str:
    """A value as it may stand in a message: one line, quoted when text, cut when long."""
    if isinstance(value, str):
        value = message("quoted", text=value)
    text = " ".join(str(message("nothing") if value is None else value).split())
    return text if len(text) <= limit else text[: limit - 1] + "…"


def one_of(words: Iterable[str], limit: int = 12) -> str:
    """`one of: a, b, c` with a long list cut short."""
    every = list(words)
    if len(every) > limit:
        return message("one-of-many", words=", ".join(every[:limit]), count=len(every))
    return message("one-of", words=", ".join(every))
