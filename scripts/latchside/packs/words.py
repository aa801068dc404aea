"""Words of a job's pages: days, times, quantities, and what a zone does in plain words for the people on site."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from math import ceil
from typing import Protocol

from babel.dates import format_date
from markupsafe import Markup

from latchside.figures.one_system import unit_in
from latchside.figures.units import IMPERIAL, other_system, readable, stated, with_unit
from latchside.figures.words import accepted_in_both
from latchside.library.quantity import quantity
from latchside.library.traits import traits
from latchside.markup import markup
from latchside.messages import LOCALE, messages
from latchside.packs.paper import Paper
from latchside.planning.plan import Expected, OpeningPlan, Zone

message = messages(__name__)

_PROOFS = {"trip": "measure-trip"}
"""The end of the proof that a plan may have no limit of its own for, with the step that measures it."""


class Day(Protocol):
    """A day of the calendar."""

    @property
    def year(self) -> int: ...  # noqa: D102
    @property
    def month(self) -> int: ...  # noqa: D102
    @property
    def day(self) -> int: ...  # noqa: D102


@dataclass(frozen=True)
class Reading:
    """What is read or seen at a contact: its label, what it should be, and the sign of its unit, if it has one."""

    measure: str
    label: str
    expected: str
    unit: str


def day(one: Day) -> str:
    """A day that reads the same on both continents: 9 March 2026."""
    return format_date(date(one.year, one.month, one.day), "d\u00a0MMMM y", LOCALE.replace("-", "_"))


def known(value: int | str | None) -> str:
    """A fact as the survey gives it, or that it is not known."""
    return message("not-known") if value is None else str(value)


def yes_no(value: bool | None) -> str:
    """yes, no, or not known."""
    return known(None) if value is None else message("yes") if value else message("no")


def amount(value: float, unit: str, *, imperial: bool = False) -> str:
    """A quantity with its unit, where it has one: 1 piece, 2 pieces. A length of cable is never shown shorter."""
    if f"count-{unit}" in message:
        return message(f"count-{unit}", count=ceil(value), amount=stated(value))
    if other_system(value, unit) is not None and (unit in IMPERIAL) != imperial:
        length, other = other_system(value, unit) or (value, unit)
        return with_unit(stated(ceil(length - 1e-9)), other)
    return with_unit(stated(value), unit)


def minutes(whole: float) -> str:
    """Minutes as hours and minutes, rounded up."""
    hours, left = divmod(-int(-(whole - 1e-9) // 1), 60)
    parts = [with_unit(str(hours), "h")] if hours else []
    return " ".join([*parts, with_unit(str(left), "min")] if left or not hours else parts)


def unit(value: Expected, *, imperial: bool = False) -> str:
    """The sign of the unit that keeps a reading's figures short."""
    limits = tuple(limit for limit in (value.low, value.high) if limit is not None)
    return unit_in(readable(limits, value.unit)[1], imperial=imperial)


def response(zone: Zone) -> str:
    """The first word of a zone's response: delayed, followed, instant or always-on."""
    return zone.response.partition(" ")[0].rstrip(",;:").lower()


def plainly(zone: Zone, monitored: bool | None, **by_region: Markup) -> Markup:
    """What happens when an opening of a zone is opened while the system is set, with the words of the region."""
    id_ = f"response-{response(zone)}"
    known = id_ in message
    effect = markup(message, id_, **by_region) if known else markup(message, "other-response", response=zone.response)
    return effect + Markup(" ") + markup(message, "reports", **by_region) if zone.reports and monitored else effect


def reading_name(measure: str, label: str = "") -> str:
    """What a reading is called on paper: a short name where there is one, and its own label elsewhere."""
    id_ = f"short-{measure}"
    return message(id_) if id_ in message else label


def own_reading(value: Expected, *, imperial: bool = False) -> Reading:
    """A value that the plan expects of a contact, as it is read."""
    name = reading_name(value.measure, value.label)
    return Reading(value.measure, name, value.shown, unit(value, imperial=imperial))


def proofs(page: Paper, one: OpeningPlan, shown: str, *, imperial: bool = False) -> Iterator[Reading]:
    """What is written of every contact when it is proved, beside its own readings.

    `shown` is the name of its zone.
    """
    planned = {value.measure for value in one.expected}
    fitted = [traits(device) for device in page.records("device", [one.choice.device])]
    if any(device.by_magnet for device in fitted) and "fit-gap" not in planned:
        yield Reading("fit-gap", reading_name("fit-gap"), message("by-own-label"), unit_in("mm", imperial=imperial))
    if any(device.wired for device in fitted):
        yield Reading("landed", reading_name("landed"), message("landed"), "")
    for measure, step in _PROOFS.items():
        if measure in planned:
            continue
        expect = page.step(f"prove-opening/{step}").get("measure", {}).get("expect")
        if expect and "device_value" not in expect:
            own, other, own_is_imperial = accepted_in_both(quantity(expect))
            text = own if other is None or own_is_imperial == imperial else other
            yield Reading(measure, reading_name(measure), text, unit_in(expect["unit"], imperial=imperial))
    yield Reading("name", reading_name("name"), shown, "")
    if any(device.link == "radio" for device in fitted):
        yield Reading("cover", reading_name("cover"), message("tamper-seen"), "")
    yield Reading("closed-again", reading_name("closed-again"), message("shows-closed"), "")
