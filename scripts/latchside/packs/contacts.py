"""The contacts of a job one by one: two at an opening are read, proved and handed over each by itself."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from latchside.planning.plan import OpeningPlan, Plan, Zone
from latchside.planning.zones import contact_names


@dataclass(frozen=True)
class Spot:
    """One contact of an opening: its own name, the name of the zone that shows it, and its anchor on the test sheet."""

    plan: OpeningPlan
    name: str
    shown: str
    anchor: str


def spots(plan: Plan) -> Iterator[Spot]:
    """Every contact that is fitted or kept, in the order of the walk."""
    for one in plan.openings:
        if one.choice.device is None:
            continue
        for number, name in enumerate(contact_names(one)):
            anchor = f"test-{one.opening.id}{f'-contact-{number + 1}' if number else ''}"
            yield Spot(one, name, name if number < one.zones else one.spoken, anchor)


def handed_over(contacts: Iterable[Spot], watched: Iterable[Zone]) -> Iterator[tuple[Spot, Zone]]:
    """Each contact that is watched from now on, with its zone; without those that no position is free for."""
    zones: dict[str, list[Zone]] = {}
    for zone in watched:
        zones.setdefault(zone.opening, []).append(zone)
    for spot in contacts:
        here = zones.get(spot.plan.opening.id, [])
        if here and not spot.plan.choice.lacks:
            yield spot, next((zone for zone in here if zone.spoken == spot.shown), here[0])
