"""A plan at a glance, as plain data for a page that shows it beside the survey while that is filled in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from latchside.library.model import Library
from latchside.planning.asked import asked
from latchside.planning.bearing import bearing
from latchside.planning.plan import Line, OpeningPlan, Plan, Problem

Data = Mapping[str, Any]


def glance(plan: Plan, library: Library) -> Data:
    """The plan's openings in the order of the walk, and what concerns the whole site.

    `problems` beside the openings are those of the site and of the panel; `questions` stand in the order in which they
    decide most, each once, with what it is asked of: an opening by its id and name, the site, or the control unit; and
    the field of the survey that its answer goes into.
    """
    ids = {one.opening.id for one in plan.openings}
    spoken = {one.opening.id: one.spoken for one in plan.openings}
    return {
        "openings": [_opening(plan, one, library) for one in plan.openings],
        "problems": _problems(one for one in plan.problems if one.about not in ids),
        "questions": _questions(plan, spoken),
        "zones": len({one.position for one in plan.zones}),
        "days": len(plan.days),
        "minutes": sum(one.minutes for one in plan.days),
    }


def _questions(plan: Plan, spoken: Mapping[str, str]) -> list[Data]:
    fields = {(one.text, one.about): one.field for one in plan.questions}

    def of(text: str, about: str) -> Data:
        return {"about": about, "spoken": spoken.get(about, ""), "field": fields[text, about]}

    return [
        {
            "text": one.text,
            "decides": [{"why": why, "of": [of(one.text, id_) for id_ in about]} for why, about in one.decides],
        }
        for one in asked(sorted(plan.questions, key=lambda one: one.order))
    ]


def _opening(plan: Plan, one: OpeningPlan, library: Library) -> Data:
    device = library.find("device", one.choice.device) if one.choice.device else None
    return {
        "id": one.opening.id,
        "spoken": one.spoken,
        "positions": list(dict.fromkeys(zone.position for zone in plan.zones if zone.opening == one.opening.id)),
        "device": {"name": device.name, "address": device.address} if device else None,
        "by_lead": bool(one.choice.overridden),
        "reasons": list(one.choice.reasons),
        "against": list(one.choice.against),
        "bearing": bearing(plan, one),
        "figures": _lines(one.figures),
        "problems": _problems(found for found in plan.problems if found.concerns(one.opening.id)),
        "fixing": _fixing(one),
        "expected": [{"label": found.label, "shown": found.shown} for found in one.expected],
    }


def _fixing(one: OpeningPlan) -> Data | None:
    held = one.fixing
    return {"sensor": held.sensor, "magnet": held.magnet, "spacer": held.spacer, "hold": held.hold} if held else None


def _lines(lines: Iterable[Line]) -> list[Data]:
    return [
        {"name": one.name, "shown": one.shown, "verdict": one.verdict, "meaning": one.meaning, "action": one.action}
        for one in lines
    ]


def _problems(problems: Iterable[Problem]) -> list[Data]:
    return [{"found": one.found, "action": one.action} for one in problems]
