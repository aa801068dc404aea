"""The zone schedule: one line for each zone, with the reason for every setting.

Positions are numbered in the order of the survey, which is the order of the walk: at the walk test the names come up
in that order, and an opening added at the end changes no other zone. The numbers are those of this job; the control
unit may begin at a later one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from latchside.figures.for_device.check_ins import FIGURE, time
from latchside.figures.words import in_words
from latchside.library.model import Library, Record
from latchside.library.quantity import quantity
from latchside.library.traits import traits
from latchside.messages import Message, messages, within
from latchside.planning.figures_for.check_ins import asked
from latchside.planning.names import second_name
from latchside.planning.plan import OpeningPlan, Zone
from latchside.surveys.survey import Survey

message = messages(__name__)
DELAYED, FOLLOWED, INSTANT, ALWAYS_ON = "delayed", "followed", "instant", "always-on"
_WITH_TAMPER = ("double", "double-across", "parallel")
"""Layouts of resistors in which a wired position tells tamper from opening."""


def zones(survey: Survey, plans: Sequence[OpeningPlan], library: Library) -> tuple[Zone, ...]:
    """The schedule: every zone in the order of the survey, its tamper line below it.

    Zones that no position is free for are numbered after all others of their link.
    """
    counts = {"wired": 0, "radio": 0}
    made: dict[tuple[int, int], Zone] = {}
    for index, plan in sorted(enumerate(plans), key=lambda pair: pair[1].choice.lacks):
        device = library.find("device", plan.choice.device) if plan.choice.device else None
        for part in range(plan.zones if device else 0):
            assert device is not None
            link = traits(device).link
            counts[link] += 1
            position = f"{link[0].upper()}{counts[link]}"
            made[index, part] = _zone(position, part, plan, device, survey, library)
    layout = survey.control_unit.layout
    return tuple(line for key in sorted(made) for line in _with_tamper(made[key], layout))


def contact_names(plan: OpeningPlan) -> tuple[str, ...]:
    """The name of each contact of an opening that has a device."""
    if plan.contact_names or plan.contacts < 2:
        return plan.contact_names or (plan.spoken,)
    return plan.spoken, second_name(plan.spoken, plan.opening.kind)


def _zone(position: str, part: int, plan: OpeningPlan, device: Record, survey: Survey, library: Library) -> Zone:
    opening = plan.opening
    response, why_response = _response(opening.use, part)
    reports, why_reports = _reports(survey.site.monitored)
    chime, why_chime = _chime(opening.use, part, survey.control_unit.chime)
    reasons = [why_response, _input(device, plan.input), why_reports, why_chime]
    if plan.zones < plan.contacts:
        reasons.append(message("shared-loop", kind=opening.kind))
    if plan.choice.lacks:
        reasons.append(message("no-position"))
    return Zone(
        position=position,
        link=traits(device).link,
        spoken=contact_names(plan)[part],
        opening=opening.id,
        device=device.id,
        input=plan.input or "",
        response=response,
        reports=reports,
        chime=chime,
        supervision=_supervision(device, survey, library),
        reasons=tuple(filter(None, reasons)),
    )


def _response(use: str | None, part: int) -> tuple[str, Message]:
    if use == "entry-route":
        return (FOLLOWED, message("second-leaf-follows")) if part else (DELAYED, message("delayed"))
    if use == "on-route":
        return FOLLOWED, message("followed")
    return INSTANT, message("instant" if use else "instant-use-unknown")


def _reports(monitored: bool | None) -> tuple[bool, Message]:
    if monitored is None:
        return True, message("reports-in-doubt")
    return monitored, message("reports" if monitored else "no-reports")


def _chime(use: str | None, part: int, wanted: bool | None) -> tuple[bool, Message | None]:
    if use != "entry-route" or part:
        return False, None
    if wanted is None:
        return False, message("chime-unknown")
    return wanted, message("chime" if wanted else "no-chime")


def _input(device: Record, id_: str | None) -> Message | None:
    """Which input is in use, where the device has several."""
    name = next((str(entry["name"]) for entry in device["inputs"] if entry["id"] == id_), None)
    return message("input", name=within(name)) if name and len(device["inputs"]) > 1 else None


def _supervision(device: Record, survey: Survey, library: Library) -> Message:
    if traits(device).wired:
        return message("supervised-by-loop", layout=survey.control_unit.layout or "unknown")
    figure = library.find("formula", FIGURE)
    site = survey.site
    needed = asked(figure["values"], site.region, site.grade) if figure is not None else None
    if needed is not None:
        id_ = "supervised-grade-unknown" if site.grade is None else "supervised"
        return message(id_, within=time(needed.between_min), rule=needed.words)
    window = device["values"].get("missed-window")
    if window is None:
        return message("supervised-by-panel")
    return message("supervised-by-device", window=in_words(quantity(window)))


def _with_tamper(zone: Zone, layout: str | None) -> Iterator[Zone]:
    """A zone, and below it its tamper where the resistors tell that apart: a second meaning of the same position.

    It takes no position and no name of its own: the panel shows it under the name of its zone.
    """
    yield zone
    if layout in _WITH_TAMPER and zone.link == "wired":
        reasons = message("tamper-told-apart", layout=layout), message("tamper-always-on")
        tamper = message("tamper", position=zone.position)
        yield replace(zone, spoken=tamper, response=ALWAYS_ON, chime=False, reasons=reasons)
