"""What stands against a zone schedule: too few positions, the entry route, and names."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from latchside.messages import Message, listed, messages
from latchside.planning.house import House
from latchside.planning.names import Name, heard, unsayable
from latchside.planning.plan import OpeningPlan, Problem, Zone, problem
from latchside.planning.short_names import Limit, limit_of, name_key, shorter
from latchside.planning.zones import ALWAYS_ON, DELAYED, FOLLOWED
from latchside.surveys.survey import ControlUnit, Survey

message = messages(__name__)


def zone_problems(
    survey: Survey, plans: Sequence[OpeningPlan], named: Sequence[Name], schedule: Sequence[Zone], house: House
) -> Iterator[Problem]:
    """Every problem of the schedule, those of the site first. The name of a tamper line is never wrong."""
    zones = [zone for zone in schedule if zone.response != ALWAYS_ON]
    yield from _entry_route(plans, zones)
    yield from _same_or_alike(zones, survey.control_unit.zones_in_use)
    yield from _hard_to_read_or_say(zones, limit_of(survey.control_unit, house))
    yield from _numbered(plans, named)


def position_problems(unit: ControlUnit, zones: Sequence[Zone]) -> Iterator[Problem]:
    """What stands against the zones for want of positions."""
    wired, radio = (sum(zone.link == link for zone in zones) for link in ("wired", "radio"))
    if unit.wired_positions is not None and wired > unit.wired_positions:
        yield _too_few("too-few-wired", wired, unit.wired_positions)
    if unit.radio_positions is None or radio <= unit.radio_positions:
        return
    if unit.radio_positions == 0 and (unit.wired_positions is None or unit.wired_positions > wired):
        yield problem(message, "control-unit", "radio-on-wired-position", zones=radio)
    else:
        yield _too_few("too-few-radio", radio, unit.radio_positions)


def _too_few(id: str, zones: int, free: int) -> Problem:
    found, action = message(f"{id}.found", zones=zones, free=free), message(f"{id}.action")
    return Problem("control-unit", "too-few-positions", found, action)


def _entry_route(plans: Sequence[OpeningPlan], zones: Sequence[Zone]) -> Iterator[Problem]:
    entries = [plan for plan in plans if plan.opening.use == "entry-route"]
    responses = {zone.response for zone in zones}
    if not entries:
        yield problem(message, "site", "no-entry-route", others="yes" if FOLLOWED in responses else "no")
    elif DELAYED not in responses:
        names = listed([plan.spoken for plan in entries], "unit")
        yield problem(message, "site", "entry-route-without-delayed-zone", openings=names)


def _same_or_alike(zones: Sequence[Zone], in_use: Sequence[str]) -> Iterator[Problem]:
    """Names that are the same or sound the same; each zone is compared with those before it."""
    known = _Known()
    for name in in_use:
        known.add(name, "")
    for zone in zones:
        name = zone.spoken
        if twin := known.twin(name):
            yield problem(message, zone.opening, "double-name", name=name, other=_zone(*twin))
        elif alike := known.alike(name):
            yield problem(message, zone.opening, "names-sound-alike", name=name, other=_zone(*alike))
        known.add(name, zone.position)


_Named = tuple[str, str]
"""A name, and the position of its zone; empty for a zone that is in use already."""


def _zone(name: str, position: str) -> Message:
    return message("zone-of-job", position=position, name=name) if position else message("zone-in-use", name=name)


class _Known:
    """Names so far, by how they are written and how they sound; the first of each wins."""

    def __init__(self) -> None:
        self._written: dict[str, _Named] = {}
        self._heard: dict[str, _Named] = {}
        self._kindless: dict[str, _Named] = {}
        self._bare: dict[str, _Named] = {}

    def add(self, name: str, position: str) -> None:
        whole, bare = heard(name)
        named = name, position
        self._written.setdefault(name_key(name), named)
        self._heard.setdefault(whole, named)
        (self._kindless if bare is None else self._bare).setdefault(whole if bare is None else bare, named)

    def twin(self, name: str) -> _Named | None:
        """The same name."""
        return self._written.get(name_key(name))

    def alike(self, name: str) -> _Named | None:
        """A name that sounds like this one, or like it without the word for what opens (front, front door)."""
        whole, bare = heard(name)
        return self._heard.get(whole) or (self._bare.get(whole) if bare is None else self._kindless.get(bare))


def _hard_to_read_or_say(zones: Sequence[Zone], limit: Limit) -> Iterator[Problem]:
    for zone in zones:
        name = zone.spoken
        if not limit.fits(name):
            found = problem(message, zone.opening, "name-too-long", name=name, letters=len(name), limit=limit.words())
            fitting = next((one for one in shorter(name) if limit.fits(one)), None)
            yield replace(found, action=message("name-too-long.shorter", shorter=fitting)) if fitting else found
        if words := unsayable(name):
            yield problem(message, zone.opening, "name-not-sayable", name=name, words=listed(list(words), "unit"))


def _numbered(plans: Sequence[OpeningPlan], named: Sequence[Name]) -> Iterator[Problem]:
    groups: dict[str, list[OpeningPlan]] = {}
    for plan, name in zip(plans, named, strict=True):
        if name.numbered:
            groups.setdefault(name.spoken.rpartition(" ")[0].casefold(), []).append(plan)
    for group in groups.values():
        name_of_all = group[0].spoken.rpartition(" ")[0]
        yield problem(message, group[0].opening.id, "names-by-number", count=len(group), name=name_of_all)
