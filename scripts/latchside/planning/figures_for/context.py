"""What the figures of an opening are calculated from, and the calculation, which runs once for the same inputs.

Many openings share a wall, a cable or a cell, so results are cached by the figure and its inputs, a bounded number of
them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property, lru_cache
from typing import Any

from latchside.figures.catalogue import Figure, InputError
from latchside.figures.for_device.worked import Missing, Ratings
from latchside.library.model import Record
from latchside.library.quantity import Quantity
from latchside.library.traits import Traits, traits
from latchside.planning.house import House
from latchside.surveys.survey import ControlUnit, Opening, Survey

NORTH_AMERICA = ("united-states", "canada")
EUROPE = ("united-kingdom", "europe")


class Known(Ratings):
    """Ratings that are read and converted once: a class of device is asked the same for every opening."""

    def __init__(self, values: Mapping[str, Mapping[str, object]]) -> None:
        super().__init__(values)
        self._stated: dict[str, Quantity] = {}
        self._all: dict[tuple[str, str], tuple[float, ...]] = {}
        self._ends: dict[tuple[str, str, bool], float] = {}

    def stated(self, name: str) -> Quantity:
        """The rating as the record states it."""
        if name not in self._stated:
            self._stated[name] = super().stated(name)
        return self._stated[name]

    def all(self, name: str, unit: str) -> tuple[float, ...]:
        """The alternatives of a rating, or the one figure it has, from low to high."""
        if (name, unit) not in self._all:
            self._all[name, unit] = super().all(name, unit)
        return self._all[name, unit]

    def limit(self, name: str, unit: str) -> float:
        """The highest figure of a rating with its tolerance."""
        if (name, unit, True) not in self._ends:
            self._ends[name, unit, True] = super().limit(name, unit)
        return self._ends[name, unit, True]

    def floor(self, name: str, unit: str) -> float:
        """The lowest figure of a rating with its tolerance."""
        if (name, unit, False) not in self._ends:
            self._ends[name, unit, False] = super().floor(name, unit)
        return self._ends[name, unit, False]


@dataclass(frozen=True, eq=False)
class Device:
    """A device class with its ratings. Made once for each record."""

    record: Record

    @cached_property
    def ratings(self) -> Ratings:
        """Its values, in the unit that is asked for."""
        return Known(self.record["values"])

    @cached_property
    def traits(self) -> Traits:
        """What it is."""
        return traits(self.record)

    @cached_property
    def wired(self) -> bool:
        """Its zone has a cable to the control unit."""
        return self.traits.wired

    @cached_property
    def transmitter(self) -> bool:
        """It reports the loop of a wired contact, which has a profile of its own."""
        return self.traits.takes_loop

    @cached_property
    def drilled(self) -> bool:
        """It sits in holes of leaf and frame."""
        return self.traits.drilled


@lru_cache(maxsize=64)
def device_of(record: Record) -> Device:
    """The device of a record."""
    return Device(record)


@dataclass(frozen=True)
class Context:
    """One opening with its device, the site, the day and the firm's own figures.

    `contact` is the class of the wired contact on the loop of a transmitter, where it can be named.
    """

    opening: Opening
    device: Device
    survey: Survey
    figures: Mapping[str, Figure]
    on: date
    house: House | None = None
    contact: Device | None = None

    @property
    def sensing(self) -> Context:
        """The same of what senses there: of the contact on the loop of a transmitter, where its class is named."""
        return self if self.contact is None else replace(self, device=self.contact, contact=None)

    @property
    def unit(self) -> ControlUnit:
        """The control unit."""
        return self.survey.control_unit

    @property
    def region(self) -> str | None:
        """Where the site is; None where that is not known."""
        return self.survey.site.region

    @property
    def grade(self) -> str | None:
        """The grade that is asked for, `none` where the site has none; None where that is not known."""
        return self.survey.site.grade

    @property
    def building(self) -> str | None:
        """The kind of building; None where that is not known."""
        return self.survey.site.building

    @property
    def two_way(self) -> bool | None:
        """The receiver polls its devices; None where that is not known."""
        return self.survey.control_unit.two_way

    def rule(self, name: str, otherwise: float) -> float:
        """A house rule, or this where the firm has none."""
        return self.house[name] if self.house is not None and name in self.house.values else otherwise

    def constant(self, figure: str, name: str) -> Mapping[str, Any]:
        """A value that the record of a figure states. Raises Missing where there is no such figure."""
        if figure not in self.figures:
            raise Missing(figure)
        value: Mapping[str, Any] = self.figures[figure].data["values"][name]
        return value

    def answer(self, figure: str, inputs: Mapping[str, Any]) -> Mapping[str, Any] | None:
        """The outputs of a figure; None where there is no such figure or it refuses the inputs."""
        return worked(self.figures, figure, inputs)


class _Held:
    """A figure as a key: the very same one, which is held so that no other can take its place."""

    def __init__(self, figure: Figure) -> None:
        self.figure = figure

    def __hash__(self) -> int:
        return id(self.figure)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Held) and other.figure is self.figure


def worked(figures: Mapping[str, Figure], figure: str, inputs: Mapping[str, Any]) -> Mapping[str, Any] | None:
    """The outputs of a figure; None where there is no such figure or it refuses the inputs."""
    if figure not in figures:
        return None
    given = tuple((name, tuple(one) if isinstance(one, list) else one) for name, one in sorted(inputs.items()))
    return _worked(_Held(figures[figure]), given)


@lru_cache(maxsize=8192)
def _worked(held: _Held, given: tuple[tuple[str, Any], ...]) -> Mapping[str, Any] | None:
    inputs = {name: list(one) if isinstance(one, tuple) else one for name, one in given}
    try:
        return held.figure.answer(inputs).outputs
    except InputError:
        return None
