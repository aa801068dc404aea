"""Where a device suits and where not, as its record says it, held against an opening.

An answer has three values: it holds, it does not hold, or that is not known and these fields would tell.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from latchside.figures.for_device.worked import Ratings
from latchside.jobs.facts import UNITS, Test, above, below, is_one_of
from latchside.jobs.said import said
from latchside.jobs.survey import Opening
from latchside.library.model import Library, Record


@dataclass(frozen=True)
class Truth:
    """Whether a condition holds; None where it is not known, and then `missing` names the fields that would tell."""

    holds: bool | None
    missing: tuple[str, ...] = ()


@dataclass(frozen=True)
class Condition:
    """One sentence of a device with its tests. `text` and `reason` are plain words."""

    text: str
    reason: str
    tests: tuple[Test, ...]
    fields: frozenset[str]
    weight: int
    rules_out: bool = False

    def of(self, opening: Opening) -> Truth:
        """Whether it holds: not, as soon as one test fails, whatever is not known of the others."""
        missing: dict[str, None] = {}
        for test in self.tests:
            holds, unknown = test(opening)
            if holds is False:
                return Truth(False)
            if holds is None:
                missing.update(dict.fromkeys(unknown))
        return Truth(None, tuple(missing)) if missing else Truth(True)


@dataclass(frozen=True)
class Profile:
    """A device as choosing sees it: sentences without a condition are for the reader and are not here."""

    id: str
    name: str
    wired: bool
    kinds: frozenset[str]
    suits: tuple[Condition, ...]
    avoid: tuple[Condition, ...]


@lru_cache(maxsize=8)
def profiles(library: Library) -> tuple[Profile, ...]:
    """Every device of a library, in the order of their ids."""
    return tuple(_profile(record, library) for record in library.of("device"))


def _profile(record: Record, library: Library) -> Profile:
    return Profile(
        id=record.id,
        name=record.name,
        wired=record["link"] == "wired",
        kinds=frozenset(record["openings"]),
        suits=tuple(_conditions(record, "suits", library)),
        avoid=tuple(_conditions(record, "avoid", library)),
    )


def _conditions(record: Record, list_: str, library: Library) -> Iterator[Condition]:
    ratings = Ratings(record["values"])
    for entry in record[list_]:
        if "when" in entry:
            yield Condition(
                text=said(entry["text"], record, library),
                reason=said(entry["reason"], record, library),
                tests=tuple(_test(one, ratings) for one in entry["when"]),
                fields=frozenset(one["field"] for one in entry["when"]),
                weight=entry.get("weight", 1),
                rules_out=entry.get("rules_out", False),
            )


def _test(data: Mapping[str, Any], ratings: Ratings) -> Test:
    field = data["field"]
    if "is" in data:
        return is_one_of(field, frozenset(data["is"]))
    make, bound = (above, data["above"]) if "above" in data else (below, data["below"])
    return make(field, bound_in(bound, UNITS[field], ratings))


def bound_in(bound: Mapping[str, Any], unit: str, ratings: Ratings) -> float:
    """A bound in a unit. Raises figures' Missing where the device does not state its value in such a unit."""
    if "of" not in bound:
        own = Ratings({"own": {"value": bound["value"], "unit": bound["unit"], "status": "common practice"}})
        return own.most("own", unit)
    value = _rated(bound["of"], bound.get("limit", "value"), unit, ratings)
    if "less" in bound:
        value -= _rated(bound["less"], bound.get("limit", "value"), unit, ratings)
    return float(f"{value * bound.get('share', 1):.12g}")


def _rated(name: str, limit: str, unit: str, ratings: Ratings) -> float:
    """A value of the device; as its least or most, with the tolerance that its record allows."""
    if limit == "min":
        return ratings.floor(name, unit)
    return ratings.limit(name, unit) if limit == "max" else ratings.most(name, unit)
