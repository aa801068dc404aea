"""Words of a job's pages: days, times, quantities, and what a zone does in plain words for the people on site."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from math import ceil
from typing import Protocol

from babel.dates import format_date

from latchside.figures.units import readable, stated, symbol, with_unit
from latchside.figures.words import accepted
from latchside.library.quantity import quantity
from latchside.messages import LOCALE, messages
from latchside.pages.page import Page
from latchside.planning.plan import Expected, OpeningPlan, Zone

message = messages(__name__)

_PROOFS = {"play": "measure-play", "trip": "measure-trip"}
"""The two ends of the proof, each with the step that measures it."""


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


def day(one: Day) -> str:
    """A day that reads the same on both continents: 9 March 2026."""
    return format_date(date(one.year, one.month, one.day), "d\u00a0MMMM y", LOCALE.replace("-", "_"))


def known(value: int | str | None) -> str:
    """A fact as the survey gives it, or that it is not known."""
    return message("not-known") if value is None else str(value)


def yes_no(value: bool | None) -> str:
    """yes, no, or not known."""
    return known(None) if value is None else message("yes") if value else message("no")


def amount(value: float, unit: str) -> str:
    """A quantity with its unit, where it has one: 1 piece, 2 pieces."""
    if f"count-{unit}" in message:
        return message(f"count-{unit}", count=ceil(value), amount=stated(value))
    return with_unit(stated(value), unit)


def between(pieces: Sequence[Timed]) -> str:
    """The time of pieces of work: as a rule, and from best to worst where these differ."""
    low, usual, high = (sum(getattr(one, name) for one in pieces) for name in ("low", "minutes", "high"))
    if low == high:
        return minutes(usual)
    return message("between", usual=minutes(usual), low=minutes(low), high=minutes(high))


def minutes(whole: float) -> str:
    """Minutes as hours and minutes, rounded up."""
    hours, left = divmod(-int(-(whole - 1e-9) // 1), 60)
    parts = [with_unit(str(hours), "h")] if hours else []
    return " ".join([*parts, with_unit(str(left), "min")] if left or not hours else parts)


def unit(value: Expected) -> str:
    """The sign of the unit that keeps a reading's figures short."""
    limits = tuple(limit for limit in (value.low, value.high) if limit is not None)
    return symbol(readable(limits, value.unit)[1])


def response(zone: Zone) -> str:
    """The first word of a zone's response: delayed, followed, instant or always-on."""
    return zone.response.partition(" ")[0].rstrip(",;:").lower()


def plainly(zone: Zone, monitored: bool | None) -> str:
    """What happens when an opening of a zone is opened while the system is set."""
    id_ = f"response-{response(zone)}"
    effect = message(id_) if id_ in message else message("other-response", response=zone.response)
    return f"{effect} {message('reports')}" if zone.reports and monitored else effect


def proofs(page: Page, one: OpeningPlan, shown: str) -> Iterator[tuple[str, str]]:
    """What is written of every contact when it is proved, beside its own readings: what, and what it should be.

    `shown` is the name of its zone.
    """
    planned = {value.measure for value in one.expected}
    for measure, step in _PROOFS.items():
        if measure in planned:
            continue
        expect = page.step(f"prove-opening/{step}").get("measure", {}).get("expect")
        if expect and "device_value" not in expect:
            yield message(f"proof-{measure}"), accepted(quantity(expect))
    yield message("name-shown"), shown
    yield message("shut-again"), message("shows-closed")
