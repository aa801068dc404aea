"""Names that fit a keypad: whole words are left out; the fullest name that fits and no other zone has wins."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import count

from latchside.messages import Message, messages
from latchside.planning.house import House
from latchside.surveys.survey import ControlUnit

message = messages(__name__)
_KIND_WORDS = frozenset({
    "door", "double", "window", "sash", "roller", "up-and-over", "sliding", "leaf", "hatch", "gate", "roof",
    "lift-and-slide",
})  # fmt: skip
"""Words for what opens, which a name can do without."""
_QUALIFIERS = frozenset({
    "upper", "lower", "front", "rear", "back", "left", "right", "first", "second", "third", "ground", "main", "side",
    "north", "south", "east", "west", "big", "small", "large", "old", "new", "the",
})  # fmt: skip
"""Words that tell which of several, and not where."""


@dataclass(frozen=True)
class Limit:
    """What a keypad shows of a name: the letters on each line, and the lines. No word is broken."""

    letters: int
    lines: int = 1

    def fits(self, name: str) -> bool:
        """Whether the whole name is shown."""
        lines, room = 1, self.letters
        for word in name.split():
            if len(word) > self.letters:
                return False
            if room < self.letters and len(word) + 1 > room:
                lines, room = lines + 1, self.letters
            room -= len(word) + (room < self.letters)
        return lines <= self.lines

    def words(self) -> Message:
        """The limit, for a reader."""
        return message("limit", letters=self.letters, lines=self.lines)


def limit_of(unit: ControlUnit, house: House) -> Limit:
    """The limit of the panel; where nobody told it, that of the house."""
    if unit.name_length is not None:
        return Limit(unit.name_length)
    return Limit(int(house["name-length"]), int(house["name-lines"]))


def fold(name: str) -> str:
    """A name in small letters, without accents and double spaces."""
    if name.isascii():
        return " ".join(name.lower().split())
    apart = unicodedata.normalize("NFKD", name.casefold())
    return " ".join("".join(sign for sign in apart if not unicodedata.combining(sign)).split())


def name_key(name: str) -> str:
    """A key that is equal for names that differ only in capitals, accents, spaces and signs."""
    return re.sub(r"\W+", "", fold(name)) or name


def suffixed(bases: Sequence[str], suffixes: Sequence[str], limit: Limit | None, taken: Collection[str]) -> str:
    """The fullest base with the fullest suffix that fits and is not taken.

    A base is never left with only a word such as `upper`, which alone is no place. Where none fits, its last word
    is cut and numbered: what is added never makes a name too long. A name without a suffix stays as it is, and is a
    problem.
    """
    telling = [base for base in bases if not set(_place(base)) <= _QUALIFIERS] or bases
    made = [joined((base, suffix)) for suffix in suffixes for base in telling]
    if limit is None:
        return made[0]
    found = next((name for name in made if limit.fits(name) and name_key(name) not in taken), None)
    return found or (_numbered(bases[-1], limit, taken) if suffixes[-1] else made[0])


def _place(base: str) -> tuple[str, ...]:
    """The words of a name that tell where, without those for what opens."""
    return tuple(word for word in base.casefold().split() if word not in _KIND_WORDS)


def _numbered(word: str, limit: Limit, taken: Collection[str]) -> str:
    """The word, cut to what the keypad shows, with the first number that makes the name unique."""
    made = (f"{word[: limit.letters - len(str(number)) - 1].rstrip()} {number}" for number in count(2))
    return next(name for name in made if name_key(name) not in taken)


def shorter(name: str) -> Iterator[str]:
    """A name, then without the words for what opens, then with one word less each time, numbers last.

    “Room 1204” without its number is any room; “1204” is still that room.
    """
    words = name.split()
    yield name
    while len(words) > 1 and words[-1].casefold() in _KIND_WORDS:
        words.pop()
    while words:
        yield " ".join(words)
        plain = [index for index, word in enumerate(words) if not any(map(str.isdigit, word))]
        words.pop(plain[-1] if plain else -1)


def joined(parts: Iterable[str]) -> str:
    """The words of a name in a row; empty parts are left out."""
    return " ".join(part for part in parts if part)
