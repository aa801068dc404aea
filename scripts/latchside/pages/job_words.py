"""Words of a job's pages: days, times, quantities, and what a zone does in plain words for the people on site."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Protocol

from latchside.figures.units import readable, stated, symbol, with_unit
from latchside.figures.words import accepted
from latchside.library.quantity import quantity
from latchside.pages.page import Page
from latchside.planning.plan import Expected, OpeningPlan, Zone

_MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
_PLAINLY = {
    "delayed": "It gives time to unset, and sounds the alarm when that time is over.",
    "followed": "It waits with the entry door when that opened first, and sounds the alarm at once when it did not.",
    "instant": "It sounds the alarm at once.",
    "always-on": "It sounds the alarm at once, set or not.",
}
_SHEET = {
    "play": ("measure-play", "Play, shut and latched, without a trip"),
    "trip": ("measure-trip", "Opening at the edge when the zone shows open"),
}
"""The two ends of the proof: the step that measures each, and what is written."""


class Day(Protocol):
    """A day of the calendar."""

    @property
    def year(self) -> int: ...  # noqa: D102
    @property
    def month(self) -> int: ...  # noqa: D102
    @property
    def day(self) -> int: ...  # noqa: D102


class Timed(Protocol):
    """Work with its minutes: at best, as a rule and at worst."""

    @property
    def low(self) -> float: ...  # noqa: D102
    @property
    def minutes(self) -> float: ...  # noqa: D102
    @property
    def high(self) -> float: ...  # noqa: D102


def day(date: Day) -> str:
    """A day that reads the same on both continents: 9 March 2026."""
    return f"{date.day}\u00a0{_MONTHS[date.month - 1]} {date.year}"


def yes_no(value: bool | None) -> str:
    """yes, no, or not known."""
    return "not known" if value is None else "yes" if value else "no"


_COUNTED = ("piece", "set", "roll")
"""What is counted in words, not by a sign."""


def amount(value: float, unit: str) -> str:
    """A quantity with its unit, where it has one: 1 piece, 2 pieces."""
    return with_unit(stated(value), f"{unit}s" if unit in _COUNTED and value != 1 else unit)


def between(pieces: Sequence[Timed]) -> str:
    """The time of pieces of work: as a rule, and from best to worst where these differ."""
    low, usual, high = (sum(getattr(one, name) for one in pieces) for name in ("low", "minutes", "high"))
    return minutes(usual) if low == high else f"{minutes(usual)} (from {minutes(low)} to {minutes(high)})"


def minutes(whole: float) -> str:
    """Minutes as hours and minutes, rounded up."""
    hours, left = divmod(-int(-(whole - 1e-9) // 1), 60)
    parts = [with_unit(str(hours), "h")] if hours else []
    return " ".join([*parts, with_unit(str(left), "min")] if left or not hours else parts)


def counted(number: int, word: str) -> str:
    """So many of something: 1 question, 2 questions."""
    return f"{number} {word}{'' if number == 1 else 's'}"


def unit(value: Expected) -> str:
    """The sign of the unit that keeps a reading's figures short."""
    limits = tuple(limit for limit in (value.low, value.high) if limit is not None)
    return symbol(readable(limits, value.unit)[1])


def response(zone: Zone) -> str:
    """The first word of a zone's response: delayed, followed, instant or always-on."""
    return zone.response.partition(" ")[0].rstrip(",;:").lower()


def plainly(zone: Zone, monitored: bool | None) -> str:
    """What happens when an opening of a zone is opened while the system is set."""
    told = _PLAINLY.get(response(zone), f"Response: {zone.response}.")
    return f"{told} It reports to the alarm receiving centre." if zone.reports and monitored else told


def proofs(page: Page, one: OpeningPlan, shown: str) -> Iterator[tuple[str, str]]:
    """What is written of every contact when it is proved, beside its own readings: what, and what it should be.

    `shown` is the name of its zone.
    """
    planned = {value.measure for value in one.expected}
    for measure, (step, label) in _SHEET.items():
        if measure in planned:
            continue
        expect = page.step(f"prove-opening/{step}").get("measure", {}).get("expect")
        if expect and "device_value" not in expect:
            yield label, accepted(quantity(expect))
    yield "Name heard or shown at the control unit", shown
    yield "Leaf shut again", "the zone shows closed with no further action"
