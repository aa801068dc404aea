"""Spoken names of zones: place, side and opening, and which names are taken for one another when heard."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from latchside.planning.short_names import Limit, fold, joined, same, shorter, suffixed
from latchside.surveys.survey import Opening

__all__ = ["Name", "contacts", "heard", "names", "same", "second_name", "unsayable"]

SAID = {
    "hinged-door": "door", "double-door": "double door", "casement": "window", "double-hung": "sash window",
    "tilt-and-turn": "window", "sliding": "sliding leaf", "lift-and-slide": "lift-and-slide door",
    "roof-window": "roof window", "roller-door": "roller door", "up-and-over": "up-and-over door",
    "hatch": "hatch", "gate": "gate",
}  # fmt: skip
"""What an opening is called aloud."""

SECOND = {"double-door": "passive leaf", "double-hung": "upper sash"}
"""The part of an opening that has a contact of its own."""
_SECOND_SHORT = {"double-door": ("leaf two", "leaf 2"), "double-hung": ("upper",)}
"""The same where a keypad has no room for it."""

NUMBERS = (
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
    "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty",
)  # fmt: skip

_IN_FULL = {
    "rm": "room", "bdrm": "bedroom", "bthrm": "bathroom", "ktchn": "kitchen", "kit": "kitchen", "lvg": "living",
    "lh": "left", "rh": "right", "gf": "ground floor", "wc": "toilet", "util": "utility", "gar": "garage",
    "ofc": "office", "frt": "front", "bk": "back", "flr": "floor", "dwnstrs": "downstairs", "upstrs": "upstairs",
}  # fmt: skip
_COMPASS = {
    "n": "north", "e": "east", "s": "south", "w": "west",
    "ne": "north-east", "nw": "north-west", "se": "south-east", "sw": "south-west",
}  # fmt: skip
_FILLERS = {"the", "a", "an", "of", "at", "in", "on", "to", "by"}
_KINDS = {"door", "window", "gate", "hatch", "opening", "contact", "zone", "double", "single", "sliding", "sash"}
_VOWELS = frozenset("aeiou")


@dataclass(frozen=True)
class Name:
    """The spoken name of an opening. `made` where the survey gives none; `numbered` where others share its words.

    `second` is that of its second contact, where it has one.
    """

    spoken: str
    made: bool
    numbered: bool = False
    second: str = ""

    @property
    def contacts(self) -> tuple[str, ...]:
        """The name of each contact."""
        return (self.spoken, self.second) if self.second else (self.spoken,)


def contacts(opening: Opening) -> int:
    """How many contacts an opening wants: its second leaf or sash has one of its own."""
    second = {"double-door": "passive_leaf", "double-hung": "upper_sash"}.get(opening.kind)
    return 2 if second and getattr(opening, second) else 1


def second_name(name: str, kind: str) -> str:
    """The name of the zone of the second leaf or sash."""
    return f"{name} {SECOND.get(kind, 'second contact')}"


def names(openings: Sequence[Opening], limit: Limit | None = None, in_use: Sequence[str] = ()) -> tuple[Name, ...]:
    """A name for each opening, in their order: the survey's own, or one made of place, side and kind.

    Made names that coincide are numbered along the walk, so that each is heard once only. A name that the survey
    gives is never touched; what is made or added here keeps to the limit where whole words can be left out for it.
    """
    full = [one.spoken or _made(one) for one in openings]
    counts = Counter(fold(name) for name, one in zip(full, openings, strict=True) if not one.spoken)
    taken = {same(name) for name in (*in_use, *full)}
    met: Counter[str] = Counter()
    firsts = []
    for name, one in zip(full, openings, strict=True):
        if one.spoken:
            firsts.append(Name(" ".join(name.split()), made=False))
            continue
        numbered = counts[fold(name)] > 1
        number = (_number(met[fold(name)]), str(met[fold(name)] + 1)) if numbered else ("",)
        met[fold(name)] += 1
        whole = joined((name, number[0]))
        fits = limit is None or limit.fits(whole)
        spoken = whole if fits else suffixed(tuple(_shorter(one)), number, limit, taken)
        firsts.append(Name(spoken, made=True, numbered=numbered))
        taken.add(same(firsts[-1].spoken))
    return tuple(_with_second(name, one, limit, taken) for name, one in zip(firsts, openings, strict=True))


def _with_second(name: Name, opening: Opening, limit: Limit | None, taken: set[str]) -> Name:
    if contacts(opening) < 2:
        return name
    suffixes = (SECOND[opening.kind], *_SECOND_SHORT[opening.kind])
    second = suffixed(tuple(shorter(name.spoken)), suffixes, limit, taken)
    taken.add(same(second))
    return Name(name.spoken, name.made, name.numbered, second)


def _shorter(opening: Opening) -> Iterator[str]:
    """The made name, then with less and less of it."""
    full = _made(opening)
    place, side = _capital(_in_full(opening.place, {})), _plain_start(_in_full(opening.side, _COMPASS))
    kind = SAID.get(opening.kind, "opening")
    yield full
    if full.endswith(kind) and " " in kind:
        yield f"{full.removesuffix(kind)}{kind.split()[-1]}"
    yield joined((place, kind))
    yield joined((place, kind.split()[-1]))
    yield joined((place, side))
    yield from shorter(place)


def heard(name: str) -> tuple[str, str | None]:
    """How a name sounds, and how it sounds without the word for what opens (None where it has no such word).

    Two names that share what is heard are taken for one another: what stays of a word on a bad line is its first
    letter and its consonants.
    """
    words = [word.removesuffix("s") if len(word) > 3 else word for word in re.findall(r"\w+", fold(name))]
    words = [word for word in words if word not in _FILLERS] or words
    bare = [word for word in words if word not in _KINDS]
    whole = "".join(map(_skeleton, words)) or name
    return whole, "".join(map(_skeleton, bare)) if bare and len(bare) < len(words) else None


def unsayable(name: str) -> tuple[str, ...]:
    """The parts of a name that nobody can say: abbreviations and signs."""
    return tuple(word for word in name.split() if _cannot_be_said(word))


def _made(opening: Opening) -> str:
    place, side = _in_full(opening.place, {}), _in_full(opening.side, _COMPASS)
    kind = SAID.get(opening.kind, "opening")
    there = set(re.findall(r"\w+", fold(place)))
    side = "" if set(re.findall(r"\w+", fold(side))) <= there else side
    if kind.split()[-1] in there:  # the place is called by its opening, as in "Back door"
        return f"{_capital(place)} {_plain_start(side)} side".replace("side side", "side") if side else _capital(place)
    return " ".join(part for part in (_capital(place), _plain_start(side), kind) if part)


def _in_full(words: str, more: dict[str, str]) -> str:
    known = _IN_FULL | more
    return " ".join(known.get(word.casefold().removesuffix("."), word) for word in words.split())


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _plain_start(words: str) -> str:
    """A side inside a name starts small, unless it has other capitals of its own."""
    return words[:1].lower() + words[1:] if words[1:].islower() else words


def _number(index: int) -> str:
    return NUMBERS[index] if index < len(NUMBERS) else str(index + 1)


def _skeleton(word: str) -> str:
    kept = word[:1]
    for sign in word[1:]:
        if sign.isdigit() or (sign not in _VOWELS and sign != kept[-1]):
            kept += sign
    return kept


def _cannot_be_said(word: str) -> bool:
    letters = re.sub(r"[\W\d_]", "", fold(word))
    latin = letters.isascii() and len(letters) > 1 and not _VOWELS & set(letters) and "y" not in letters
    signs = re.search(r"[/&+#*@=<>|\\_~^]", word) is not None
    return latin or signs or (word.endswith(".") and len(letters) < 6)
