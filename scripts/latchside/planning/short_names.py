"""Names within what a keypad shows: whole words are left out, the fullest name that fits and is nobody else's wins."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import count

from latchside.planning.house import House
from latchside.surveys.survey import ControlUnit

_KIND_WORDS = frozenset({
    "door", "double", "window", "sash", "roller", "up-and-over", "sliding", "leaf", "hatch", "gate", "roof",
    "lift-and-slide",
})  # fmt: skip


@dataclass(frozen=True)
class Limit:
    """What a keypad shows of a name: so many letters on each of so many lines, no word broken."""

    letters: int
    lines: int = 1

    def fits(self, name: str) -> bool:
        """The name is shown whole."""
        lines, room = 1, self.letters
        for word in name.split():
            if len(word) > self.letters:
                return False
            if room < self.letters and len(word) + 1 > room:
                lines, room = lines + 1, self.letters
            room -= len(word) + (room < self.letters)
        return lines <= self.lines

    def words(self) -> str:
        """The limit as a reader says it."""
        return f"{self.letters} letters" if self.lines == 1 else f"{self.lines} lines of {self.letters} letters"


def limit_of(unit: ControlUnit, house: House) -> Limit:
    """The panel's own limit; where nobody told it, that of the house."""
    if unit.name_length is not None:
        return Limit(unit.name_length)
    return Limit(int(house["name-length"]), int(house["name-lines"]))


def fold(name: str) -> str:
    """A name without capitals, accents and double spaces."""
    if name.isascii():
        return " ".join(name.lower().split())
    apart = unicodedata.normalize("NFKD", name.casefold())
    return " ".join("".join(sign for sign in apart if not unicodedata.combining(sign)).split())


def same(name: str) -> str:
    """What two names share that differ in nothing but capitals, accents and spaces."""
    return re.sub(r"\W+", "", fold(name)) or name


def suffixed(bases: Sequence[str], suffixes: Sequence[str], limit: Limit | None, taken: Collection[str]) -> str:
    """The fullest of the bases with the fullest of the suffixes that fits and is not taken.

    Where none does, a suffix stands by itself with a number, because what is added never makes a name too long. A name
    without a suffix stays as it is: too long, and a problem.
    """
    made = [joined((base, suffix)) for suffix in suffixes for base in bases]
    if limit is None:
        return made[0]
    found = next((name for name in made if limit.fits(name) and same(name) not in taken), None)
    return found or (_numbered(suffixes[-1], limit, taken) if suffixes[-1] else made[0])


def _numbered(word: str, limit: Limit, taken: Collection[str]) -> str:
    """The word with the first number that makes it a name of its own, cut where the keypad is very short."""
    word = word.rstrip(" 0123456789") or word
    made = (f"{word[: limit.letters - len(str(number)) - 1].rstrip()} {number}" for number in count(2))
    return next(name for name in made if same(name) not in taken)


def shorter(name: str) -> Iterator[str]:
    """A name, then without the words for what opens, then with one word less each time: a number goes last.

    “Room 1204” without its number is any room, and without its word it is still the one.
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
    """Parts of a name as one; an empty one is left out."""
    return " ".join(part for part in parts if part)
