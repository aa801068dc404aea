"""What a survey says of an opening, as far as it says it: the words a field may have, or the range of a figure."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from latchside.surveys.survey import Opening

UNITS: Mapping[str, str] = {
    "gap": "mm", "play": "mm", "gap-and-play": "mm", "trip-room": "mm", "step": "mm", "height": "m",
    "cable-length": "m", "distance": "m", "rail-depth": "mm", "width": "m",
}  # fmt: skip
"""The fields that hold a figure, and the unit a read survey has it in."""

_YES_NO = {
    "fire-rated": "fire_rated", "escape": "escape", "cable": "cable", "outdoors": "outdoors", "drill": "drill",
    "old-contact": "old_contact", "powered": "powered", "glazed": "glazed",
}  # fmt: skip
_WORDS = {
    "kind": "kind", "leaf-material": "leaf_material", "frame-material": "frame_material", "use": "use", "wish": "wish",
    "outer-wall": "outer_wall",
}  # fmt: skip
_FIGURES = {
    "gap": "gap_mm", "play": "play_mm", "step": "step_mm", "height": "height_m", "cable-length": "cable_length_m",
    "distance": "distance_m", "rail-depth": "rail_depth_mm", "width": "width_m",
}  # fmt: skip
DOORS = frozenset({"hinged-door", "double-door"})
WINDOWS = frozenset({"casement", "double-hung", "tilt-and-turn", "sliding", "lift-and-slide", "roof-window"})
"""Kinds of opening that have a pane, unless the survey says that this one has none."""

_STEEL_IN = {
    "none": frozenset[str](), "leaf": frozenset(["leaf"]), "frame": frozenset(["frame"]),
    "both": frozenset(["leaf", "frame"]),
}  # fmt: skip
"""The parts in which each answer about steel finds some."""

ASKED = {field: field.replace("-", "_") for field in (*_YES_NO, *_WORDS, *_FIGURES, "steel", "hardware")}
ASKED |= {"way": "walls"}
"""Each field by its name in the job schema; a field that is put together from others names none."""
SEVERAL = ("way", "hardware")
"""The fields that hold several words; a condition holds where one of its words is among them."""

READS: dict[str, tuple[str, ...]] = {
    field: (attribute,) for field, attribute in (*_YES_NO.items(), *_WORDS.items(), *_FIGURES.items())
}
"""What may be read of an opening for each field, by its names in a read survey."""
READS |= {
    "way": ("walls",), "hardware": ("hardware",), "trip-room": ("kind",), "gap-and-play": ("gap_mm", "play_mm"),
    "steel": ("steel", "leaf_material", "frame_material"), "cable-way": ("cable", "cable_length_m"),
    "glazed": ("glazed", "kind", "leaf_material"), "rail-depth": ("rail_depth_mm", "glazed"),
}  # fmt: skip


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
    if field == "glazed":
        return _glazed(opening)
    if field in _YES_NO:
        told = getattr(opening, _YES_NO[field])
        return Words(None, (ASKED[field],)) if told is None else Words(frozenset(["yes" if told else "no"]))
    told = getattr(opening, _WORDS[field])
    return Words(None, (ASKED[field],)) if told in (None, "unknown") else Words(frozenset([told]))


def several(opening: Opening, field: str) -> frozenset[str] | None:
    """The words of a field that holds several: walls on the way, hardware of a leaf. None where nobody looked."""
    if field == "way":
        return None if opening.walls is None else frozenset(wall.material for wall in opening.walls)
    return None if opening.hardware is None else frozenset(opening.hardware)


def figure(opening: Opening, field: str) -> Figure:
    """The range of a figure, in the unit of `UNITS`."""
    if field == "gap-and-play":
        return _sum(figure(opening, "gap"), figure(opening, "play"))
    if field == "trip-room":  # set by the kind and the limits of the house: `conditions` holds it against them
        return Figure(0.0, math.inf)
    told = getattr(opening, _FIGURES[field])
    if field == "rail-depth" and told is None and opening.glazed is not True:
        return _without_glass(opening)
    if told is None:
        return Figure(-math.inf if field == "step" else 0.0, math.inf, (ASKED[field],))
    return Figure(told, told)


def _without_glass(opening: Opening) -> Figure:
    """No glass, no end to what is solid; where that is not known, either answer would tell something."""
    low = math.inf if opening.glazed is False else 0.0
    return Figure(low, math.inf, () if opening.glazed is False else ("glazed", "rail_depth"))


def _sum(one: Figure, other: Figure) -> Figure:
    return Figure(_exact(one.low + other.low), _exact(one.high + other.high), (*one.missing, *other.missing))


def _exact(value: float) -> float:
    """Without the last bits that a sum of tenths leaves behind."""
    return float(f"{value:.12g}")


def steel_told_against(opening: Opening) -> str | None:
    """The part of steel in which a magnet is said to have found none: leaf, frame or both. None where all agrees."""
    made = _of_steel(opening)
    missed = made - _STEEL_IN.get(opening.steel or "", made)
    return _steel_word(missed) if missed else None


def _steel(opening: Opening) -> Words:
    """A leaf or frame of steel is steel, whatever the test magnet is said to have found; any other may hide some."""
    made = _of_steel(opening)
    if opening.steel in _STEEL_IN:
        return Words(frozenset([_steel_word(made | _STEEL_IN[opening.steel])]))
    if len(made) == 1:
        return Words(frozenset([*made, "both"]), ("steel",))
    return Words(frozenset(["both"])) if made else Words(None, ("steel",))


def _of_steel(opening: Opening) -> frozenset[str]:
    told = {"leaf": opening.leaf_material, "frame": opening.frame_material}
    return frozenset(part for part, material in told.items() if material == "steel")


def _steel_word(parts: frozenset[str]) -> str:
    return "both" if len(parts) > 1 else next(iter(parts), "none")


def _glazed(opening: Opening) -> Words:
    """A window has a pane, and so has a leaf of glass; of any other leaf somebody has to say."""
    if opening.glazed is None and (opening.kind in WINDOWS or opening.leaf_material == "glass"):
        return Words(frozenset(["yes"]))
    return Words(None, ("glazed",)) if opening.glazed is None else Words(frozenset(["yes" if opening.glazed else "no"]))


def _cable_way(opening: Opening) -> Words:
    """A cable that ends there, the measured run of a new one, or neither: who cannot run one measures none, or 0."""
    told = bool(opening.cable_length_m)
    if opening.cable is None:
        return Words(frozenset(["there", "new" if told else "none"]), ("cable",))
    return Words(frozenset(["there" if opening.cable else "new" if told else "none"]))


Answer = tuple[bool | None, tuple[str, ...]]
"""Whether something holds; None with the names of what is missing where that is not known."""


@dataclass(frozen=True, eq=False)
class Test:
    """Whether something holds of a field of an opening."""

    field: str
    answer: Callable[[Opening], Answer]

    def __call__(self, opening: Opening) -> Answer:
        """The answer at an opening."""
        return self.answer(opening)


def is_one_of(field: str, listed: frozenset[str]) -> Test:
    """A test for words."""

    def test(opening: Opening) -> Answer:
        if field in SEVERAL:
            met = several(opening, field)
            return (None, (ASKED[field],)) if met is None else (bool(met & listed), ())
        found = words(opening, field)
        if found.possible is None:
            return None, found.missing
        if found.possible <= listed:
            return True, ()
        return (None, found.missing) if found.possible & listed else (False, ())

    return Test(field, test)


def above(field: str, bound: float) -> Test:
    """A test for more than a bound."""

    def test(opening: Opening) -> Answer:
        found = figure(opening, field)
        return (True, ()) if found.low > bound else (False, ()) if found.high <= bound else (None, found.missing)

    return Test(field, test)


def below(field: str, bound: float) -> Test:
    """A test for less than a bound."""

    def test(opening: Opening) -> Answer:
        found = figure(opening, field)
        return (True, ()) if found.high < bound else (False, ()) if found.low >= bound else (None, found.missing)

    return Test(field, test)
