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
        figures = stated.one_of or tuple(one for one in (stated.low, stated.value, stated.high) if one is not None)
        return tuple(_in(one, stated.unit, unit) for one in figures)

    def least(self, name: str, unit: str) -> float:
        """The lowest figure of a rating, without its tolerance."""
        return min(self.all(name, unit))

    def most(self, name: str, unit: str) -> float:
        """The highest figure of a rating, without its tolerance."""
        return max(self.all(name, unit))

    def limit(self, name: str, unit: str) -> float:
        """The highest figure of a rating with its tolerance."""
        stated = self.stated(name)
        high = limits(stated)[1]
        return self.most(name, unit) if high is None else _in(high, stated.unit, unit)

    def floor(self, name: str, unit: str) -> float:
        """The lowest figure of a rating with its tolerance."""
        stated = self.stated(name)
        low = limits(stated)[0]
        return self.least(name, unit) if low is None else _in(low, stated.unit, unit)


def _in(value: float, unit: str, wanted: str) -> float:
    try:
        return value if unit == wanted else read_number(f"{value!r} {unit}", wanted)
    except TypedError as error:
        raise Missing(str(error)) from None
