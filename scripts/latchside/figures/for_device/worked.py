"""What is worked out for a device: a table with a title, what it means, and what was taken for granted."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from latchside.figures.catalogue import Figure
from latchside.figures.typed import TypedError, read_number
from latchside.figures.words import limits
from latchside.library.quantity import Quantity, quantity

Figures = Mapping[str, Figure]


@dataclass(frozen=True)
class Note:
    """Something that the working rests on, with its status (a word of the vocabulary)."""

    words: str
    status: str


@dataclass(frozen=True)
class Worked:
    """One figure worked for one device.

    `figure` is the figure's id and `inputs` what a link to it carries; `also` names further figures that were used.
    The first cell of each row is its heading. `meaning` says in a sentence or two what it means in the trade; it and
    the notes may hold the references of a record's text.
    """

    id: str
    title: str
    figure: str
    inputs: Mapping[str, object]
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    meaning: str
    notes: tuple[Note, ...] = ()
    also: tuple[str, ...] = ()


class Missing(Exception):  # noqa: N818 - not an error: a device that does not state a rating has no such figure
    """A rating that the device does not state."""


class Ratings:
    """The ratings of a device by name, each in the unit that is asked for. What is not stated raises Missing."""

    def __init__(self, values: Mapping[str, Mapping[str, object]]) -> None:
        self._values = values

    def __contains__(self, name: str) -> bool:
        return name in self._values

    def stated(self, name: str) -> Quantity:
        """The rating as the record states it."""
        if name not in self._values:
            raise Missing(name)
        return quantity(self._values[name])

    def all(self, name: str, unit: str) -> tuple[float, ...]:
        """The alternatives of a rating, or the one figure it has, from low to high."""
        stated = self.stated(name)
        return tuple(_in(one, stated.unit, unit) for one in figures_of(stated))

    def least(self, name: str, unit: str) -> float:
        """The lowest figure of a rating, without its tolerance."""
        return min(self.all(name, unit))

    def most(self, name: str, unit: str) -> float:
        """The highest figure of a rating, without its tolerance."""
        return max(self.all(name, unit))

    def limit(self, name: str, unit: str) -> float:
        """The highest figure of a rating with its tolerance."""
        stated = self.stated(name)
        return _in(ends(stated)[1], stated.unit, unit)

    def floor(self, name: str, unit: str) -> float:
        """The lowest figure of a rating with its tolerance."""
        stated = self.stated(name)
        return _in(ends(stated)[0], stated.unit, unit)


def figures_of(stated: Quantity) -> tuple[float, ...]:
    """The alternatives of a rating, or the one figure it has, from low to high, in the unit in which it is stated."""
    return stated.one_of or tuple(one for one in (stated.low, stated.value, stated.high) if one is not None)


def ends(stated: Quantity) -> tuple[float, float]:
    """The lowest and the highest that a rating may be, with its tolerance, in the unit in which it is stated."""
    low, high = limits(stated)
    figures = figures_of(stated)
    return min(figures) if low is None else low, max(figures) if high is None else high


def _in(value: float, unit: str, wanted: str) -> float:
    try:
        return value if unit == wanted else read_number(f"{value!r} {unit}", wanted)
    except TypedError as error:
        raise Missing(str(error)) from None
