"""What the free positions of the panel may still come to: a second contact in doubt, and radio that is not heard."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from latchside.messages import listed, messages
from latchside.planning.names import may_be_second
from latchside.planning.plan import OpeningPlan, Problem, Zone, problem
from latchside.planning.work import unheard
from latchside.planning.zones import ALWAYS_ON
from latchside.surveys.survey import ControlUnit

message = messages(__name__)
LOOP = "loop-states"
"""The figure of a loop: on radio, that of a transmitter, on whose loop a second contact takes no position."""


def positions_in_doubt(unit: ControlUnit, plans: Sequence[OpeningPlan], schedule: Sequence[Zone]) -> Iterator[Problem]:
    """Problems that are known before the day, though no figure of positions fails yet."""
    zones = [zone for zone in schedule if zone.response != ALWAYS_ON]
    free = {"wired": unit.wired_positions, "radio": unit.radio_positions}
    left = {
        link: None if count is None else count - sum(zone.link == link for zone in zones)
        for link, count in free.items()
    }
    yield from _no_room(plans, zones, left)
    yield from _wired_instead(plans, left["wired"])


def _no_room(plans: Sequence[OpeningPlan], zones: Sequence[Zone], left: dict[str, int | None]) -> Iterator[Problem]:
    """A second leaf or sash that may open, and no position for its zone."""
    links = {zone.opening: zone.link for zone in zones}
    for plan in plans:
        id_ = plan.opening.id
        link = links.get(id_)
        in_series = link == "radio" and any(line.figure == LOOP for line in plan.figures)
        if link is None or in_series or plan.choice.lacks:
            continue
        if left[link] == 0 and may_be_second(plan.opening):
            yield problem(message, id_, "no-room-for-second", kind=plan.opening.kind, link=link)


def _wired_instead(plans: Sequence[OpeningPlan], left: int | None) -> Iterator[Problem]:
    """Radio openings that are not heard while wired positions are free: which of them gets one."""
    silent = [plan for plan in plans if unheard(plan.figures)]
    if not left or not silent:
        return
    near = sorted(silent, key=_run)
    names = listed([plan.spoken for plan in near[:left]], "unit")
    code = "wired-position-free"
    ids = tuple(plan.opening.id for plan in near[:left])
    found = message(f"{code}.found", free=left, openings=listed([plan.spoken for plan in silent], "unit"))
    more = "yes" if len(silent) > left else "no"
    yield Problem("control-unit", code, found, message(f"{code}.action", first=names, more=more), ids)


def _run(plan: OpeningPlan) -> tuple[bool, float]:
    """The shortest run first: one that was measured, else the straight way; no new run to a fire or escape door."""
    opening = plan.opening
    barred = bool(opening.fire_rated or opening.escape) and not opening.cable
    length = opening.cable_length_m or opening.distance_m
    return barred, float("inf") if length is None else length
