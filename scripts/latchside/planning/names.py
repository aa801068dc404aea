"""Spoken names of zones, made of place, side and opening; and which names sound alike.

What is heard in a name (`heard`, `unsayable`) is read from English names.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from latchside.messages import messages
from latchside.planning.short_names import Limit, fold, joined, name_key, shorter, suffixed
from latchside.surveys.survey import Opening

message = messages(__name__)
_SECOND = {"double-door": "passive_leaf", "double-hung": "upper_sash", "hatch": "loose_lid"}
"""Kinds with a part that may have a contact of its own, and the field of the survey that says so."""
_FILLERS = {"the", "a", "an", "of", "at", "in", "on", "to", "by"}
_KINDS = {"door", "window", "gate", "hatch", "opening", "contact", "zone", "double", "single", "sliding", "sash"}
_VOWELS = frozenset("aeiou")


@dataclass(frozen=True)
class Name:
    """The spoken name of an opening. `made` where the survey gives none; `numbered` where others share its words.

    `second` is the name of its second contact, where it has one.
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
    """How many contacts an opening needs: a second leaf or sash that opens has its own, a loose lid two."""
    field = _SECOND.get(opening.kind)
    return 2 if field and getattr(opening, field) else 1


def may_be_second(opening: Opening) -> bool:
    """Whether it is not known if a second leaf or sash opens, which would need a contact of its own."""
    field = _SECOND.get(opening.kind)
    return field is not None and getattr(opening, field) is None


def second_name(name: str, kind: str) -> str:
    """The name of the zone of the second leaf or sash."""
    return joined((name, message(f"second-{kind if kind in _SECOND else 'any'}")))


def names(openings: Sequence[Opening], limit: Limit | None = None, in_use: Sequence[str] = ()) -> tuple[Name, ...]:
    """A name for each opening, in their order: the survey's own, or one made of place, side and kind.

    Made names that coincide are numbered along the walk, so that each is heard only once. A name given by the survey
    is never changed; what is made or added here keeps to the limit as far as leaving out whole words can do that.
    """
    full = [one.spoken or _made(one.place, one.side, one.kind) for one in openings]
    counts = Counter(fold(name) for name, one in zip(full, openings, strict=True) if not one.spoken)
    taken = {name_key(name) for name in (*in_use, *full)}
    met: Counter[str] = Counter()
    firsts = []
    for name, one in zip(full, openings, strict=True):
        if one.spoken:
            firsts.append(Name(" ".join(name.split()), made=False))
            continue
        numbered = counts[fold(name)] > 1
        met[fold(name)] += 1
        count = met[fold(name)]
        number = (message("number", number=count), str(count)) if numbered else ("",)
        whole = joined((name, number[0]))
        fits = limit is None or limit.fits(whole)
        spoken = whole if fits else suffixed(_shorter(one.place, one.side, one.kind), number, limit, taken)
        firsts.append(Name(spoken, made=True, numbered=numbered))
        taken.add(name_key(firsts[-1].spoken))
    return tuple(_with_second(name, one, limit, taken) for name, one in zip(firsts, openings, strict=True))


def _with_second(name: Name, opening: Opening, limit: Limit | None, taken: set[str]) -> Name:
    if contacts(opening) < 2:
        return name
    id_ = f"second-{opening.kind}"
    suffixes = message(id_), message(f"{id_}.short"), message(f"{id_}.shortest"), message("second")
    second = suffixed(tuple(shorter(name.spoken)), suffixes, limit, taken)
    taken.add(name_key(second))
    return Name(name.spoken, name.made, name.numbered, second)


@lru_cache(maxsize=4096)
def _shorter(place: str, side: str, kind: str) -> tuple[str, ...]:
    """The made name, then with less and less of it."""
    full = _made(place, side, kind)
    place, side = _capital(_in_full(place)), _small(_in_full(side, compass=True))
    word, short_word = _kind(kind)
    whole = [f"{full.removesuffix(word)}{short_word}"] if full.endswith(word) and word != short_word else []
    parts = _name(place, "", word), _name(place, "", short_word), _name(place, side, "")
    return (full, *whole, *parts, *shorter(place))


def heard(name: str) -> tuple[str, str | None]:
    """How a name sounds, and how it sounds without the word for what opens (None where it has no such word).

    Names with an equal sound are mistaken for each other: on a bad line the first letter of a word and its consonants
    are heard.
    """
    words = [word.removesuffix("s") if len(word) > 3 else word for word in re.findall(r"\w+", fold(name))]
    words = [word for word in words if word not in _FILLERS] or words
    bare = [word for word in words if word not in _KINDS]
    whole = "".join(map(_skeleton, words)) or name
    return whole, "".join(map(_skeleton, bare)) if bare and len(bare) < len(words) else None


def unsayable(name: str) -> tuple[str, ...]:
    """The parts of a name that nobody can say: abbreviations and signs."""
    return tuple(word for word in name.split() if _cannot_be_said(word))


@lru_cache(maxsize=4096)
def _made(place: str, side: str, kind: str) -> str:
    place, side = _in_full(place), _in_full(side, compass=True)
    word, short_word = _kind(kind)
    there = set(re.findall(r"\w+", fold(place)))
    side = "" if set(re.findall(r"\w+", fold(side))) <= there else _small(side)
    if short_word not in there:
        return _name(_capital(place), side, word)
    if not side:  # the place is called by its opening, as in "Back door"
        return _capital(place)
    if side.endswith(message("side")):
        return _name(_capital(place), side, "")
    return message("on-side", place=_capital(place), side=side)


def _name(place: str, side: str, kind: str) -> str:
    """A name of these words, any of which may be empty."""
    return " ".join(message("name", place=place, side=side, kind=kind).split())


def _kind(kind: str) -> tuple[str, str]:
    """What an opening of a kind is called, in full and where a keypad has little room."""
    id_ = f"kind-{kind}" if f"kind-{kind}" in message else "kind-any"
    return message(id_), message(f"{id_}.short")


def _in_full(text: str, *, compass: bool = False) -> str:
    """Words of a survey without the abbreviations that surveyors use."""
    return " ".join(_word_in_full(word, compass=compass) for word in text.split())


def _word_in_full(word: str, *, compass: bool) -> str:
    short = word.casefold().removesuffix(".")
    ids = (f"compass-{short}", f"in-full-{short}") if compass else (f"in-full-{short}",)
    return next((message(id_) for id_ in ids if id_ in message), word)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _small(side: str) -> str:
    """A side inside a name starts small, unless it has other capitals."""
    return side[:1].lower() + side[1:] if side[1:].islower() else side


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
