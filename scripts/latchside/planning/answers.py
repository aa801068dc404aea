"""The answers that a field of a survey may have, as far as any two of them could make different plans.

A word is each word of its list. A number is a point each side of every limit that the library sets in its dimension,
and a few more from end to end of what may be typed.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from dataclasses import fields as of_class
from functools import lru_cache
from itertools import pairwise
from typing import Any

from latchside.figures.for_device.worked import Missing, Ratings
from latchside.library.model import Library
from latchside.library.walk import mappings_with
from latchside.planning.conditions import bound_in
from latchside.planning.facts import UNITS
from latchside.planning.house import TABLE
from latchside.surveys.build import attribute
from latchside.surveys.columns import SCHEMA, Column, columns
from latchside.surveys.survey import ControlUnit, Opening, Site, Wall

UNKNOWN = "unknown"
NO_FACTS = frozenset({
    "id", "name", "place", "side", "spoken", "kind", "notes", "summary", "surveyed", "units", "invented", "insurer",
    "class", "reason", "zones_in_use",
})  # fmt: skip
"""Names, texts, lists of names, and a choice of the lead. The kind is always told."""
_OLD = "old-buildings"
_STEPS = (0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.25, 0.5)
"""Shares of the whole range of a number at which it is tried between its ends."""
_FEW = 12
"""Whole numbers are all tried where they are no more than these."""


@dataclass(frozen=True, eq=False)
class Field:
    """A field that holds a fact: its name in a survey and in a read one, and its answers, the ends of a number first.

    `choosing` are those that choosing may tell apart: each limit of a condition, and a point each side of it. `stated`
    are those beside each figure in its dimension that a device states, by the device.
    """

    name: str
    attribute: str
    answers: tuple[Any, ...]
    choosing: tuple[Any, ...]
    stated: Mapping[str, tuple[Any, ...]]

    @property
    def usual(self) -> Any:
        """An answer that is none of the ends."""
        return self.answers[len(self.answers) // 2]

    def beside(self, *devices: str | None) -> tuple[Any, ...]:
        """The answers that the figures of these devices may tell apart."""
        return _beside_stated(self, devices)


@lru_cache(maxsize=2048)
def _beside_stated(field: Field, devices: tuple[str | None, ...]) -> tuple[Any, ...]:
    stated = [one for id_ in devices for one in field.stated.get(id_ or "", ())]
    return tuple(dict.fromkeys((*field.answers, *stated)))


@dataclass(frozen=True)
class Fields:
    """The facts of the site, the control unit and an opening."""

    site: tuple[Field, ...]
    unit: tuple[Field, ...]
    opening: tuple[Field, ...]


@lru_cache(maxsize=4)
def fields(library: Library) -> Fields:
    """Every fact of a survey with its answers."""
    known, reader = columns(library.schemas), _Reader(library)
    above = [one for one in known.above.values() if len(one.path) > 1]
    site, unit = (
        tuple(reader.fields((one for one in above if one.path[0] == part), of))
        for part, of in (("site", Site), ("control_unit", ControlUnit))
    )
    return Fields(site, unit, tuple(reader.fields(known.opening.values(), Opening)))


class _Reader:
    def __init__(self, library: Library) -> None:
        self._document: Mapping[str, Any] = library.schemas.documents[SCHEMA]
        self._library = library
        self._bounds = {field: sorted(set(_bounds(library, field))) for field in UNITS}

    def fields(self, listed: Iterable[Column], of: type) -> Iterator[Field]:
        held = {one.name for one in of_class(of)}
        for column in listed:
            name = column.path[-1]
            if name in NO_FACTS or attribute(name) not in held:
                continue
            if column.sort not in ("number", "length"):
                words = tuple(_words(column))
                yield Field(name, attribute(name), words, words, {})
                continue
            low, high = self._ends(column)
            house = _years(self._library) if name == "year_built" else _house(self._library, column.unit)
            points = (*_spread(low, high, whole=column.whole), *_beside(house, low, high, whole=column.whole))
            choosing = (low, high, *_beside(self._of_conditions(name), low, high, whole=column.whole))
            stated = {
                device.id: tuple(_beside(_stated(device["values"], column.unit), low, high, whole=column.whole))
                for device in self._library.of("device")
            }
            yield Field(name, attribute(name), tuple(dict.fromkeys(points)), tuple(dict.fromkeys(choosing)), stated)

    def _of_conditions(self, name: str) -> list[float]:
        own = self._bounds.get(name.replace("_", "-"), [])
        return sorted({*own, *self._bounds["gap-and-play"]}) if name in ("gap", "play") else own

    def _ends(self, column: Column) -> tuple[float, float]:
        node = self._node(column)
        if column.sort == "length":
            most = float(node["x-most"])
            return (-most if column.path[-1] == "step" else 0.0), most
        node = next((one for one in node.get("oneOf", ()) if "minimum" in one), node)
        most = node["maximum"]
        return node.get("minimum", most / 1e4), most

    def _node(self, column: Column) -> Mapping[str, Any]:
        node: Any = self._document["$defs"]["opening"] if len(column.path) == 1 else self._document
        for part in column.path:
            node = node["properties"][part]
        return node  # type: ignore[no-any-return]


def _words(column: Column) -> Iterator[Any]:
    match column.sort:
        case "answer":
            yield from (True, False)
        case "word":
            yield from (word for word in column.words if word != UNKNOWN)
        case "walls":
            yield from ((), (Wall("concrete", 2000.0),) * 3, *((Wall(word),) for word in column.words))
        case "words":
            yield from ((), *((word,) for word in column.words))


def _spread(low: float, high: float, *, whole: bool) -> Iterator[float]:
    """The ends of a range, then points between, closer together at its start."""
    yield from (low, high)
    if whole and high - low <= _FEW:
        yield from range(int(low), int(high) + 1)
        return
    start = max(low, 0.0)
    for step in _STEPS:
        point = start + (high - start) * step
        yield round(point) if whole else point


def _beside(limits: Iterable[float], low: float, high: float, *, whole: bool) -> Iterator[float]:
    """Each limit within a range and of either sign, and a point between it and the next on each side."""
    within = sorted({low, high, *(one for limit in limits for one in (limit, -limit) if low < one < high)})
    for one, other in pairwise(within):
        yield one
        yield round((one + other) / 2) if whole else (one + other) / 2


def _house(library: Library, unit: str) -> list[float]:
    """The figures of the firm that a length of a survey is held against: those in its own unit."""
    table = library.find("table", TABLE)
    return [float(one["value"]) for one in (table["values"].values() if table else ()) if one["unit"] == unit]


def _stated(values: Mapping[str, Mapping[str, object]], unit: str) -> Iterator[float]:
    """Every figure in the dimension of a unit."""
    ratings = Ratings(values)
    for name in values if unit in ("mm", "m", "MHz") else ():
        with suppress(Missing, ValueError):
            yield from (*ratings.all(name, unit), ratings.limit(name, unit), ratings.floor(name, unit))


def _bounds(library: Library, field: str) -> Iterator[float]:
    """Every limit that a condition sets for a fact."""
    for device in library.of("device"):
        conditions, ratings = {name: device[name] for name in ("suits", "avoid")}, Ratings(device["values"])
        for side in ("above", "below"):
            for _, test in mappings_with(frozenset({"field", side}), conditions):
                if test["field"] == field:
                    yield bound_in(test[side], UNITS[field], ratings)


def _years(library: Library) -> list[float]:
    table = library.find("table", _OLD)
    return [int(row["cells"]["last"]) for row in (table["rows"] if table else ())]
