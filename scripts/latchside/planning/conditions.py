"""Where a device suits and where not, by its record, tested against an opening.

An answer has three values: it holds, it does not hold, or it is not known, with the fields that would tell.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from operator import attrgetter
from typing import Any

from latchside.figures.for_device import mounted
from latchside.figures.for_device.worked import Ratings
from latchside.library.model import Library, Record
from latchside.library.traits import traits
from latchside.planning import bounds
from latchside.planning.facts import READS, UNITS, Test, above, below, is_one_of
from latchside.planning.holes import never
from latchside.planning.house import House, house_if_any
from latchside.planning.plain_text import plain_text
from latchside.surveys.survey import Opening

_MOST_ANSWERS = 2_000
"""Answers of each condition that are cached."""
_MOST_OPENINGS = 128
"""Openings whose truths are cached."""


@dataclass(frozen=True, eq=False)
class Truth:
    """Whether a condition holds; None where it is not known, and then `missing` names the fields that would tell."""

    holds: bool | None
    missing: tuple[str, ...] = ()


@lru_cache(maxsize=4096)
def truth(holds: bool | None, missing: tuple[str, ...] = ()) -> Truth:
    """Equal truths are one object, so that comparing them is quick."""
    return Truth(holds, missing)


@dataclass(frozen=True, eq=False)
class Condition:
    """One sentence of a device with its tests. `text` and `reason` are plain words."""

    text: str
    reason: str
    tests: tuple[Test, ...]
    fields: frozenset[str]
    weight: int
    rules_out: bool = False

    _known: dict[Any, Truth] = field(default_factory=dict)
    """Its truths so far, by the facts it reads of an opening."""

    @cached_property
    def sentences(self) -> str:
        """What it says to a reader: the condition and its reason."""
        return f"{self.text} {self.reason}"

    @cached_property
    def reads(self) -> frozenset[str]:
        """The facts of an opening that it depends on."""
        return frozenset(name for test in self.tests for name in READS[test.field])

    @cached_property
    def read(self) -> Callable[[Opening], Any]:
        """Takes those facts from an opening."""
        return attrgetter(*(sorted(self.reads) or ["kind"]))

    def of(self, opening: Opening) -> Truth:
        """Whether it holds at an opening, from the cache where it is there."""
        facts = self.read(opening)
        found = self._known.get(facts)
        if found is None:
            if len(self._known) >= _MOST_ANSWERS:
                self._known.clear()
            found = self._known[facts] = self._held(opening)
        return found

    def fails_without(self, attribute: str, opening: Opening) -> bool:
        """Whether it does not hold whatever this fact is: a test that does not read it fails."""
        return any(attribute not in READS[test.field] and test(opening)[0] is False for test in self.tests)

    def _held(self, opening: Opening) -> Truth:
        """It does not hold as soon as one test fails, even where others are not known."""
        missing: dict[str, None] = {}
        for test in self.tests:
            holds, unknown = test(opening)
            if holds is False:
                return truth(False)
            if holds is None:
                missing.update(dict.fromkeys(unknown))
        return truth(None, tuple(missing)) if missing else truth(True)


@dataclass(frozen=True, eq=False)
class Profile:
    """A device as choosing sees it. Sentences of its record without a condition are for readers only and are not here.

    `loop` says that a wired contact is on it, which may be one in place; `holes` that it needs a hole or screws;
    `magnetic` that its own magnet operates it.
    """

    id: str
    name: str
    wired: bool
    loop: bool
    holes: bool
    magnetic: bool
    kinds: frozenset[str]
    suits: tuple[Condition, ...]
    avoid: tuple[Condition, ...]

    @property
    def transmits(self) -> bool:
        """Whether it is a transmitter for the loop of a wired contact."""
        return self.loop and not self.wired


@lru_cache(maxsize=8)
def profiles(library: Library) -> tuple[Profile, ...]:
    """Every device of a library, in the order of their ids."""
    return tuple(_profile(record, library) for record in library.of("device"))


class Book:
    """All conditions of a library, numbered, and their truths at an opening in that order."""

    def __init__(self, library: Library) -> None:
        self.conditions = tuple(one for profile in profiles(library) for one in (*profile.suits, *profile.avoid))
        self.numbers = {one: number for number, one in enumerate(self.conditions)}
        self._at: dict[Opening, tuple[Truth, ...]] = {}

    def truths(self, opening: Opening) -> tuple[Truth, ...]:
        """The truth of every condition, from the cache where it is there."""
        found = self._at.get(opening)
        return self._put(opening, tuple([one.of(opening) for one in self.conditions])) if found is None else found

    def beside(
        self, truths: Sequence[Truth], numbers: Iterable[int], others: Iterable[Truth], opening: Opening
    ) -> tuple[Truth, ...]:
        """The truths at an opening, made from those at another one that differs in these conditions alone."""
        found = list(truths)
        for number, other in zip(numbers, others, strict=True):
            found[number] = other
        return self._put(opening, tuple(found))

    def reading(self, attribute: str) -> tuple[int, ...]:
        """The numbers of the conditions that depend on a fact of an opening."""
        return tuple(number for number, one in enumerate(self.conditions) if attribute in one.reads)

    def _put(self, opening: Opening, found: tuple[Truth, ...]) -> tuple[Truth, ...]:
        if len(self._at) >= _MOST_OPENINGS:
            self._at.clear()
        self._at[opening] = found
        return found


@lru_cache(maxsize=8)
def book_of(library: Library) -> Book:
    """The book of a library."""
    return Book(library)


def _profile(record: Record, library: Library) -> Profile:
    return Profile(
        id=record.id,
        name=record.name,
        wired=traits(record).wired,
        loop=traits(record).on_loop,
        holes=traits(record).needs_hole,
        magnetic=traits(record).magnetic,
        kinds=frozenset(record["openings"]),
        suits=tuple(_conditions(record["suits"], record, library)),
        avoid=tuple(_conditions((*record["avoid"], *never(record)), record, library)),
    )


def _conditions(entries: Iterable[Mapping[str, Any]], record: Record, library: Library) -> Iterator[Condition]:
    ratings, house = Ratings(record["values"]), house_if_any(library)
    for entry in entries:
        if "when" in entry:
            yield Condition(
                text=plain_text(entry["text"], record, library),
                reason=plain_text(entry["reason"], record, library),
                tests=tuple(_test(one, ratings, house, drilled=traits(record).drilled) for one in entry["when"]),
                fields=frozenset(one["field"] for one in entry["when"]),
                weight=entry.get("weight", 1),
                rules_out=entry.get("rules_out", False),
            )


def _test(data: Mapping[str, Any], ratings: Ratings, house: House | None, *, drilled: bool) -> Test:
    field = data["field"]
    if field == "trip-room":  # depends on the kind of opening alone, so every kind is tested once, here
        return is_one_of("kind", bounds.late_kinds(ratings, data["below"]["of"], house, drilled=drilled))
    if "is" in data:
        return is_one_of(field, frozenset(data["is"]))
    make, bound = (above, data["above"]) if "above" in data else (below, data["below"])
    return make(field, bound_in(bound, UNITS[field], ratings, house))


def bound_in(bound: Mapping[str, Any], unit: str, ratings: Ratings, house: House | None = None) -> float:
    """A bound in a unit. Raises `Missing` where the device does not state the value in such a unit."""
    if "of" not in bound:
        own = Ratings({"own": {"value": bound["value"], "unit": bound["unit"], "status": "common practice"}})
        return own.most("own", unit)
    value = _rated(bound["of"], bound.get("limit", "value"), unit, ratings, house)
    if "less" in bound:
        value -= _rated(bound["less"], bound.get("limit", "value"), unit, ratings, house)
    return float(f"{value * bound.get('share', 1):.12g}")


def _rated(name: str, limit: str, unit: str, ratings: Ratings, house: House | None) -> float:
    """A value of the device: its least or most with tolerance, or as it is mounted."""
    if limit in ("sure", "rest"):
        least = mounted.sure(ratings, name, unit)
        return bounds.rest(least, house) if limit == "rest" else least
    if limit == "most":
        return mounted.most(ratings, name, unit)
    if limit == "min":
        return ratings.floor(name, unit)
    return ratings.limit(name, unit) if limit == "max" else ratings.most(name, unit)
