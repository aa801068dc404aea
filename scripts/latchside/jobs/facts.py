"""What a survey says of an opening, as far as it says it: the words a field may have, or the range of a figure."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from latchside.jobs.survey import Opening

UNITS: Mapping[str, str] = {
    "gap": "mm", "play": "mm", "gap-and-play": "mm", "step": "mm", "height": "m", "cable-length": "m", "distance": "m",
}  # fmt: skip
"""The fields that hold a figure, and the unit a read survey has it in."""

_YES_NO = {
    "fire-rated": "fire_rated", "escape": "escape", "cable": "cable", "outdoors": "outdoors", "drill": "drill",
    "old-contact": "old_contact",
}  # fmt: skip
_WORDS = {
    "kind": "kind", "leaf-material": "leaf_material", "frame-material": "frame_material", "use": "use", "wish": "wish",
    "outer-wall": "outer_wall",
}  # fmt: skip
_FIGURES = {
    "gap": "gap_mm", "play": "play_mm", "step": "step_mm", "height": "height_m", "cable-length": "cable_length_m",
    "distance": "distance_m",
}  # fmt: skip
ASKED = {field: field.replace("-", "_") for field in (*_YES_NO, *_WORDS, *_FIGURES, "steel")} | {"way": "walls"}
"""Each field by its name in the job schema; a field that is put together from others names none."""


@dataclass(frozen=True)
class Words:
    """The words that are still possible: one where it is told. `missing` names what would settle it."""

    possible: frozenset[str] | None
    missing: tuple[str, ...] = ()


@dataclass(frozen=True)
class Figure:
    """The least and most that are still possible: the same where it is told."""

    low: float
    high: float
    missing: tuple[str, ...] = ()


def words(opening: Opening, field: str) -> Words:
    """The words a field may have; `possible` is None where it may be any."""
    if field == "steel":
        return _steel(opening)
    if field == "cable-way":
        return _cable_way(opening)
    if field in _YES_NO:
        told = getattr(opening, _YES_NO[field])
        return Words(None, (ASKED[field],)) if told is None else Words(frozenset(["yes" if told else "no"]))
    told = getattr(opening, _WORDS[field])
    return Words(None, (ASKED[field],)) if told in (None, "unknown") else Words(frozenset([told]))


def on_the_way(opening: Opening) -> frozenset[str] | None:
    """The materials between opening and control unit; None where nobody looked."""
    return None if opening.walls is None else frozenset(wall.material for wall in opening.walls)


def figure(opening: Opening, field: str) -> Figure:
    """The range of a figure, in the unit of `UNITS`."""
    if field == "gap-and-play":
        return _sum(figure(opening, "gap"), figure(opening, "play"))
    told = getattr(opening, _FIGURES[field])
    if told is None:
        return Figure(-math.inf if field == "step" else 0.0, math.inf, (ASKED[field],))
    return Figure(told, told)


def _sum(one: Figure, other: Figure) -> Figure:
    return Figure(_exact(one.low + other.low), _exact(one.high + other.high), (*one.missing, *other.missing))


def _exact(value: float) -> float:
    """Without the last bits that a sum of tenths leaves behind."""
    return float(f"{value:.12g}")


def _steel(opening: Opening) -> Words:
    """Where nobody held a magnet to it, a leaf or frame of steel tells its own part; any other may hide some."""
    if opening.steel not in (None, "unknown"):
        return Words(frozenset([str(opening.steel)]))
    leaf, frame = opening.leaf_material == "steel", opening.frame_material == "steel"
    if leaf and frame:
        return Words(frozenset(["both"]))
    if leaf or frame:
        return Words(frozenset(["leaf" if leaf else "frame", "both"]), ("steel",))
    return Words(None, ("steel",))


def _cable_way(opening: Opening) -> Words:
    """A cable that ends there, the measured run of a new one, or neither: who cannot run one measures none."""
    told = opening.cable_length_m is not None
    if opening.cable is None:
        return Words(frozenset(["there", "new" if told else "none"]), ("cable",))
    return Words(frozenset(["there" if opening.cable else "new" if told else "none"]))


Test = Callable[[Opening], tuple[bool | None, tuple[str, ...]]]
"""Whether something holds of an opening; None with the names of what is missing where that is not known."""


def is_one_of(field: str, listed: frozenset[str]) -> Test:
    """A test for words."""

    def test(opening: Opening) -> tuple[bool | None, tuple[str, ...]]:
        if field == "way":
            met = on_the_way(opening)
            return (None, (ASKED[field],)) if met is None else (bool(met & listed), ())
        found = words(opening, field)
        if found.possible is None:
            return None, found.missing
        if found.possible <= listed:
            return True, ()
        return (None, found.missing) if found.possible & listed else (False, ())

    return test


def above(field: str, bound: float) -> Test:
    """A test for more than a bound."""

    def test(opening: Opening) -> tuple[bool | None, tuple[str, ...]]:
        found = figure(opening, field)
        return (True, ()) if found.low > bound else (False, ()) if found.high <= bound else (None, found.missing)

    return test


def below(field: str, bound: float) -> Test:
    """A test for less than a bound."""

    def test(opening: Opening) -> tuple[bool | None, tuple[str, ...]]:
        found = figure(opening, field)
        return (True, ()) if found.high < bound else (False, ()) if found.low >= bound else (None, found.missing)

    return test
