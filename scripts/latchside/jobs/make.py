"""The plan of a job, put together: pure, so the same survey, library and date always give the same plan.

What goes on an opening depends on that opening, the site and the control unit alone, never on other openings.
Names, positions, parts and work are of all openings together, and are worked out after every choice is made.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from latchside.figures.catalogue import Figure
from latchside.jobs.at_opening import AtOpening
from latchside.jobs.cautions import cautions
from latchside.jobs.choose import choice_problems, choose
from latchside.jobs.house import House, house_of, rules_of
from latchside.jobs.items import items
from latchside.jobs.names import Name, contacts, names
from latchside.jobs.opening_figures import opening_figures
from latchside.jobs.plan import (
    Caution,
    Choice,
    Expected,
    Fixing,
    Line,
    OpeningPlan,
    Plan,
    Problem,
    Question,
    Stage,
)
from latchside.jobs.questions import questions
from latchside.jobs.service import services
from latchside.jobs.site_figures import site_figures
from latchside.jobs.survey import Survey
from latchside.jobs.work import Work, work
from latchside.jobs.zone_problems import zone_problems
from latchside.jobs.zones import zones
from latchside.library.model import Library
from latchside.version import library_version

UNKNOWN = "unknown-device"
Worked = tuple[tuple[Line, ...], tuple[Expected, ...], Fixing | None]


@dataclass(frozen=True)
class _Chosen:
    """One opening with its name, its choice and what follows from it alone."""

    at: AtOpening
    name: Name
    choice: Choice
    worked: Worked


def make_plan(survey: Survey, library: Library, figures: Mapping[str, Figure], on: date) -> Plan:
    """The plan for a survey, made for the day `on`."""
    house = house_of(library)
    rules = rules_of(survey.rules, house)
    asked = questions(survey, library)
    chosen, amiss = _chosen(survey, library, figures, on, house)
    parts = [one.at for one in chosen]
    done = work(parts, {one.at.opening.id: one.worked[0] for one in chosen}, len(asked), library, house, rules)
    warned = cautions(survey, parts, library, house)
    plans = _openings(chosen, done, warned)
    schedule = zones(survey, plans, library)
    problems = [*amiss, *zone_problems(survey, plans, [one.name for one in chosen], schedule, house), *done.problems]
    problems += _without(plans, asked, {one.about for one in amiss if one.code == UNKNOWN})
    tools = dict.fromkeys(id_ for stage in done.stages for id_ in stage.procedures)
    return Plan(
        survey=survey,
        on=on,
        library=library_version(),
        openings=plans,
        questions=asked,
        problems=_in_order(problems, survey),
        zones=schedule,
        site_figures=site_figures(survey, plans, figures, house),
        items=items(survey, parts, tools, library, house, rules),
        work=done.stages,
        service=services(plans, rules, house, on),
        cautions=warned,
        days=done.days,
    )


def _chosen(
    survey: Survey, library: Library, figures: Mapping[str, Figure], on: date, house: House
) -> tuple[list[_Chosen], list[Problem]]:
    found, problems = [], list[Problem]()
    for opening, name in zip(survey.openings, names(survey.openings), strict=True):
        choice = choose(opening, survey.site, survey.control_unit, library)
        device = library.find("device", choice.device) if choice.device else None
        contact = library.find("device", choice.contact) if choice.contact else None
        problems.extend(choice_problems(opening, choice, library))
        if choice.device and device is None:
            problems.append(_unknown(opening.id, choice.device))
            choice = replace(choice, device=None)
        worked: Worked = ((), (), None)
        if device is not None:
            worked = opening_figures(opening, device, survey, figures, on, house, contact)
        found.append(_Chosen(AtOpening(opening, device, name.spoken, contact), name, choice, worked))
    return found, problems


def _openings(chosen: Sequence[_Chosen], done: Work, warned: Sequence[Caution]) -> tuple[OpeningPlan, ...]:
    at: dict[str, list[str]] = {}
    for caution in warned:
        for about in caution.about:
            at.setdefault(about, []).append(caution.caution)
    return tuple(
        _opening(one, tuple(at.get(one.at.opening.id, ())), done.of_opening.get(one.at.opening.id, ()))
        for one in chosen
    )


def _opening(one: _Chosen, warned: tuple[str, ...], stages: tuple[Stage, ...]) -> OpeningPlan:
    lines, expected, fixing = one.worked
    return OpeningPlan(
        opening=one.at.opening,
        spoken=one.name.spoken,
        choice=one.choice,
        contacts=contacts(one.at.opening),
        input=one.at.input,
        fixing=fixing,
        figures=lines,
        expected=expected,
        cautions=warned,
        stages=stages,
    )


def _unknown(opening: str, device: str) -> Problem:
    found = f"The device {device}, which the library does not have."
    return Problem(opening, UNKNOWN, found, "Name a device class of the library, or leave the choice to it.")


def _without(plans: Sequence[OpeningPlan], asked: Sequence[Question], told: set[str]) -> list[Problem]:
    """Every opening has a device, or something is said of it; of those in `told` it is said already."""
    waiting = {one.about for one in asked}
    return [
        Problem(
            plan.opening.id, "no-device",
            f"No device class for {plan.spoken}{' until its questions are answered' if _waits(plan, waiting) else ''}.",
            "Answer what is asked of it, or choose a device by hand with the reason, or have the opening changed.",
        )
        for plan in plans
        if plan.choice.device is None and plan.opening.id not in told
    ]  # fmt: skip


def _waits(plan: OpeningPlan, waiting: set[str]) -> bool:
    return plan.opening.id in waiting


def _in_order(problems: Sequence[Problem], survey: Survey) -> tuple[Problem, ...]:
    """What concerns the whole site first, then by the walk."""
    rank = {"site": -2, "control-unit": -1} | {one.id: number for number, one in enumerate(survey.openings)}
    return tuple(sorted(problems, key=lambda one: rank.get(one.about, -3)))
