"""The zone schedule: one line for each zone, with the reason for every setting.

Positions count up in the order of the survey, which is the order of the walk: at the walk test the names then come
up as the leaves are met, and an opening added at the end moves no other zone. They are this job's own numbers; the
control unit may begin at a later one.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from latchside.figures.for_device.check_ins import FIGURE, time
from latchside.figures.words import in_words
from latchside.library.model import Library, Record
from latchside.library.quantity import quantity
from latchside.library.traits import traits
from latchside.planning.figures_for.check_ins import asked
from latchside.planning.names import SECOND, second_name
from latchside.planning.plan import OpeningPlan, Zone
from latchside.surveys.survey import Survey

DELAYED, FOLLOWED, INSTANT, ALWAYS_ON = "delayed", "followed", "instant", "always-on"

_TWO = "The two resistors set a short and a cut apart from an open leaf, so the position tells of tamper too."
_TAMPER = {
    "double": _TWO,
    "double-across": _TWO,
    "parallel": "The resistor across the contact sets a cut apart from an open leaf. A short still passes for shut.",
}
"""Layouts in which a wired position tells tamper and opening apart, and how."""

_LOOP = {
    None: "by its loop; how far depends on the resistors that the control unit asks for",
    "none": "by its loop alone: a short is never seen, and a cut reads as an open leaf",
    "series": "by its loop: a short shows, and a cut reads as an open leaf",
    "parallel": "by its loop: a cut shows, and a short passes for a shut leaf",
    "double": "by its loop: a short and a cut both show",
    "double-across": "by its loop: a short and a cut both show",
}


def zones(survey: Survey, plans: Sequence[OpeningPlan], library: Library) -> tuple[Zone, ...]:
    """The schedule: every zone in the order of the survey, each with its tamper line below it.

    What no position is free for is numbered behind all others of its sort.
    """
    counts = {"wired": 0, "radio": 0}
    made: dict[tuple[int, int], Zone] = {}
    for index, plan in sorted(enumerate(plans), key=lambda one: one[1].choice.lacks):
        device = library.find("device", plan.choice.device) if plan.choice.device else None
        for part in range(plan.zones if device else 0):
            assert device is not None
            link = traits(device).link
            counts[link] += 1
            position = f"{link[0].upper()}{counts[link]}"
            made[index, part] = _zone(position, part, plan, device, survey, library)
    why = _TAMPER.get(survey.control_unit.layout or "")
    return tuple(line for key in sorted(made) for line in _with_tamper(made[key], why))


def contact_names(plan: OpeningPlan) -> tuple[str, ...]:
    """The name of each contact of an opening that has a device."""
    if plan.contact_names or plan.contacts < 2:
        return plan.contact_names or (plan.spoken,)
    return plan.spoken, second_name(plan.spoken, plan.opening.kind)


def _zone(
    position: str, part: int, plan: OpeningPlan, device: Record, survey: Survey, library: Library
) -> Zone:  # fmt: skip
    opening = plan.opening
    response, why = _response(opening.use, part)
    reports, told = _reports(survey.site.monitored)
    chime, heard = _chime(opening.use, part, survey.control_unit.chime)
    spoken = contact_names(plan)[part]
    shared = plan.zones < plan.contacts
    lacks = _LACKS if plan.choice.lacks else ""
    why_input = _input(device, plan.input)
    return Zone(
        position=position,
        link=traits(device).link,
        spoken=spoken,
        opening=opening.id,
        device=device.id,
        input=plan.input or "",
        response=response,
        reports=reports,
        chime=chime,
        supervision=_supervision(device, survey, library),
        reasons=tuple(filter(None, (why, why_input, told, heard, _shared(plan) if shared else "", lacks))),
    )


def _response(use: str | None, part: int) -> tuple[str, str]:
    if use == "entry-route" and part:
        return FOLLOWED, "It opens after the entry door, and waits only when that was opened first."
    if use == "entry-route":
        return DELAYED, "People come in here, and need the entry time to reach the place where they unset."
    if use == "on-route":
        return FOLLOWED, "It lies inside on the entry route: it waits only when the entry door was opened first."
    if use is None:
        return INSTANT, "Its use is not known. Until it is, it answers at once, as the perimeter does."
    return INSTANT, "Nobody comes in here, so it answers at once, as the perimeter does."


def _reports(monitored: bool | None) -> tuple[bool, str]:
    if monitored is None:
        return True, "Whether the site is monitored is not known. Reporting does no harm where nobody listens."
    return monitored, "The site is monitored." if monitored else "Nobody receives reports from this site."


def _chime(use: str | None, part: int, wanted: bool | None) -> tuple[bool, str]:
    if use != "entry-route" or part:
        return False, ""
    if wanted is None:
        return False, "Nobody said whether people want a chime: none is set."
    return wanted, "The people on site want a chime while unset." if wanted else "The people on site want no chime."


_LACKS = "No position of the panel is free for it: the problems say what gives it one."


def _input(device: Record, id_: str | None) -> str:
    if len(device["inputs"]) < 2:
        return ""
    return next((f"Input: {one['name'].lower()}." for one in device["inputs"] if one["id"] == id_), "")


def _shared(plan: OpeningPlan) -> str:
    second = SECOND.get(plan.opening.kind, "second contact")
    return f"The contact of the {second} is in series on the same loop, so both show under one name."


def _supervision(device: Record, survey: Survey, library: Library) -> str:
    if traits(device).wired:
        return _LOOP[survey.control_unit.layout]
    figure = library.find("formula", FIGURE)
    site = survey.site
    needed = asked(figure["values"], site.region, site.grade) if figure is not None else None
    if needed is not None:
        unsure = ". The grade is not known" if site.grade is None else ""
        return f"on: trouble shows within {time(needed.between_min)}, as {needed.words} asks{unsure}"
    window = device["values"].get("missed-window")
    if window is None:
        return "on: the control unit shows trouble when it is not heard"
    return f"on: trouble shows when it is not heard for {in_words(quantity(window))}. The contract may ask for less"


def _with_tamper(zone: Zone, why: str | None) -> Iterator[Zone]:
    """A zone, and below it its tamper where the resistors tell that apart: a second meaning of the same position.

    It takes no position and no name: the panel shows it under the name of its zone.
    """
    yield zone
    if why is not None and zone.link == "wired":
        reasons = (why, "Tamper answers at any hour, set or unset.")
        yield replace(zone, spoken=f"Tamper of {zone.position}", response=ALWAYS_ON, chime=False, reasons=reasons)
