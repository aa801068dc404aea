"""Minutes of the work by the firm's table: each procedure at best, usually and at worst."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from math import ceil
from typing import Any

from latchside.library.model import Library, Record

TABLE = "work-times"
PACE = "pace-"
"""Prefix of a value named after a device class: the time its openings took on finished visits, in % of the table."""

AT_OPENING = ("position", "wire", "power", "enrol", "set-up", "try", "fix", "prove")
"""The stages at an opening, in the fixed order of the job."""

CHECK_IN = "prove-check-in"
RESPONSE = "prove-response"
"""The one full set of the system, with the building empty."""

ONCE = (CHECK_IN, RESPONSE)
"""Procedures of those stages that are done once for all openings, at the end."""


@dataclass(frozen=True)
class Span:
    """Minutes of hands-on work: at best, usually, at worst."""

    low: float = 0.0
    usual: float = 0.0
    high: float = 0.0

    def __add__(self, other: Span) -> Span:
        return Span(self.low + other.low, self.usual + other.usual, self.high + other.high)

    def scaled(self, by: float) -> Span:
        """The span `by` times as long."""
        return Span(self.low * by, self.usual * by, self.high * by)

    def whole(self) -> Span:
        """In whole minutes, rounded up."""
        return Span(*(float(ceil(one - 1e-9)) for one in (self.low, self.usual, self.high)))


NONE = Span()


def fixed(minutes: float) -> Span:
    """Work that always takes the same time."""
    return Span(minutes, minutes, minutes)


def total(spans: Iterable[Span]) -> Span:
    """The time of all of them, one after the other."""
    return sum(spans, NONE)


@dataclass(frozen=True)
class WorkTimes:
    """The times of a firm."""

    library: Library

    def of(self, procedure: str) -> Span:
        """The minutes of a procedure; without a row in the table, which the check reports, those of its record."""
        cells = self._cells(procedure)
        if cells is not None:
            return Span(float(cells["low"]), float(cells["usual"]), float(cells["high"]))
        record = self.library.find("procedure", procedure)
        return fixed(float(record["minutes"])) if record else NONE

    def waiting(self, procedure: str) -> float:
        """Minutes of waiting after a procedure, while other work can be done."""
        cells = self._cells(procedure)
        return float(cells.get("waiting", 0)) if cells is not None else 0.0

    def of_device(self, device: str) -> Span:
        """The minutes of one opening with one contact of a class, by the table, before its pace."""
        record = self.library.find("device", device)
        stages = [record["procedures"].get(stage, ()) for stage in AT_OPENING] if record else []
        listed = [id_ for one in stages if not isinstance(one, Mapping) for id_ in one if id_ not in ONCE]
        return total(map(self.of, listed))

    def pace(self, device: str) -> float:
        """The time a class of device takes, as a factor of the table: 1 until finished visits say otherwise."""
        values = self._table.get("values", {}) if self._table is not None else {}
        return float(values[PACE + device]["value"]) / 100 if PACE + device in values else 1.0

    @cached_property
    def _table(self) -> Record | None:
        return self.library.find("table", TABLE)

    @cached_property
    def _rows(self) -> Mapping[str, Mapping[str, Any]]:
        return {row["id"]: row["cells"] for row in self._table["rows"]} if self._table is not None else {}

    def _cells(self, procedure: str) -> Mapping[str, Any] | None:
        return self._rows.get(procedure)


def waiting_left(work: Iterable[tuple[float, float]]) -> float:
    """The waiting left after pieces of work done one after the other, each (minutes, minutes of waiting).

    A wait begins when its piece is done and runs on during the pieces after it; all waits run side by side.
    """
    left = 0.0
    for minutes, waiting in work:
        left = max(max(0.0, left - minutes), waiting)
    return left
