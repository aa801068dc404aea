"""What stands against a zone schedule: names and the entry route."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from latchside.planning.house import House
from latchside.planning.names import Name, heard, same, unsayable
from latchside.planning.plan import OpeningPlan, Problem, Zone
from latchside.planning.short_names import Limit, limit_of, shorter
from latchside.planning.zones import ALWAYS_ON, DELAYED, FOLLOWED
from latchside.surveys.survey import ControlUnit, Survey

_NAME_IT = "Write a name of its own under `spoken` in the survey."


def zone_problems(
    survey: Survey, plans: Sequence[OpeningPlan], named: Sequence[Name], schedule: Sequence[Zone], house: House
) -> Iterator[Problem]:
    """Every problem of the schedule, the site's first. A tamper line has no name that could be wrong."""
    zones = [zone for zone in schedule if zone.response != ALWAYS_ON]
    yield from _entry_route(plans, zones)
    yield from _doubles(zones, survey.control_unit.zones_in_use)
    yield from _hard_to_say(zones, plans, named, limit_of(survey.control_unit, house))


def position_problems(unit: ControlUnit, zones: Sequence[Zone]) -> Iterator[Problem]:
    """What stands against the zones for want of positions."""
    wired, radio = (sum(zone.link == link for zone in zones) for link in ("wired", "radio"))
    if unit.wired_positions is not None and wired > unit.wired_positions:
        yield Problem(
            "control-unit", "too-few-positions",
            f"{_count(wired, 'wired zone')} for {_count(unit.wired_positions, 'wired position')}.",
            "Add an expander, or choose by hand which openings go without a zone of their own.",
        )  # fmt: skip
    if unit.radio_positions is None or radio <= unit.radio_positions:
        return
    if unit.radio_positions == 0 and (unit.wired_positions is None or unit.wired_positions > wired):
        yield Problem(
            "control-unit", "radio-on-wired-position",
            f"{_count(radio, 'radio device')}, and no position that takes one: only wired positions are free.",
            "Add a receiver, or run cable to those openings. A wired position never hears a radio device.",
        )  # fmt: skip
    else:
        yield Problem(
            "control-unit", "too-few-positions",
            f"{_count(radio, 'radio zone')} for {_count(unit.radio_positions, 'radio position')}.",
            "Add a receiver, or choose by hand which openings go without a zone of their own.",
        )  # fmt: skip


def _entry_route(plans: Sequence[OpeningPlan], zones: Sequence[Zone]) -> Iterator[Problem]:
    entries = [plan for plan in plans if plan.opening.use == "entry-route"]
    responses = {zone.response for zone in zones}
    if not entries:
        yield Problem(
            "site", "no-entry-route",
            "No opening is marked as the entry door" + (", yet some are on the way from one." if FOLLOWED in responses
            else "."),
            "Ask by which door people come in and unset. Without a delayed zone they set off the alarm.",
        )  # fmt: skip
    elif DELAYED not in responses:
        yield Problem(
            "site", "entry-route-without-delayed-zone",
            f"{_listed([plan.spoken for plan in entries])}: marked as entry door, and without a zone.",
            "Choose a device for the entry door by hand, or ask for another entry door.",
        )  # fmt: skip


def _doubles(zones: Sequence[Zone], in_use: Sequence[str]) -> Iterator[Problem]:
    """Names that are the same, and names that sound the same; each zone is held against those before it."""
    known = _Known()
    for name in in_use:
        known.add(name, f"the zone {name}, which is in use")
    for zone in zones:
        name, twin, alike = zone.spoken, known.twin(zone.spoken), known.alike(zone.spoken)
        if twin:
            yield Problem(zone.opening, "double-name", f"“{name}” is also the name of {twin}.", _NAME_IT)
        elif alike:
            yield Problem(zone.opening, "names-sound-alike", f"“{name}” sounds like the name of {alike}.", _NAME_IT)
        known.add(name, f"{zone.position}, {name}")


class _Known:
    """Names met so far, by what is written and by what is heard; the first with each wins."""

    def __init__(self) -> None:
        self._written: dict[str, str] = {}
        self._heard: dict[str, str] = {}
        self._kindless: dict[str, str] = {}
        self._bare: dict[str, str] = {}

    def add(self, name: str, said: str) -> None:
        whole, bare = heard(name)
        self._written.setdefault(same(name), said)
        self._heard.setdefault(whole, said)
        (self._kindless if bare is None else self._bare).setdefault(whole if bare is None else bare, said)

    def twin(self, name: str) -> str | None:
        return self._written.get(same(name))

    def alike(self, name: str) -> str | None:
        """Whose name is heard as this one: all of it, or all but the word for what opens (front, front door)."""
        whole, bare = heard(name)
        return self._heard.get(whole) or (self._bare.get(whole) if bare is None else self._kindless.get(bare))


def _hard_to_say(
    zones: Sequence[Zone], plans: Sequence[OpeningPlan], named: Sequence[Name], limit: Limit
) -> Iterator[Problem]:
    for zone in zones:
        if not limit.fits(zone.spoken):
            found = f"“{zone.spoken}” has {len(zone.spoken)} letters. The keypad shows {limit.words()}."
            yield Problem(zone.opening, "name-too-long", found, f"{_NAME_IT}{_short(zone.spoken, limit)}")
        words = unsayable(zone.spoken)
        if words:
            found = f"“{zone.spoken}” cannot be said aloud: {_listed(words)}."
            yield Problem(zone.opening, "name-not-sayable", found, _NAME_IT)
    yield from _numbered(plans, named)


def _short(name: str, limit: Limit) -> str:
    """A shorter name to take or leave."""
    fitting = next((one for one in shorter(name) if limit.fits(one)), None)
    return f" “{fitting}” fits." if fitting else ""


def _numbered(plans: Sequence[OpeningPlan], named: Sequence[Name]) -> Iterator[Problem]:
    groups: dict[str, list[OpeningPlan]] = {}
    for plan, name in zip(plans, named, strict=True):
        if name.numbered:
            groups.setdefault(name.spoken.rpartition(" ")[0].casefold(), []).append(plan)
    for group in groups.values():
        words = group[0].spoken.rpartition(" ")[0]
        yield Problem(
            group[0].opening.id, "names-by-number",
            f"{len(group)} openings would be “{words}”. They are numbered in the order of the walk.",
            "Write what people on site would point to, such as left or right, under `spoken` in the survey.",
        )  # fmt: skip


def _count(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"


def _listed(words: Sequence[str]) -> str:
    return ", ".join(words)
