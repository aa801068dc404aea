"""The plan of a job, put together: pure, so the same survey, library and date always give the same plan.

What goes on an opening is chosen by that opening, the site and the control unit alone, never by other openings. Then
the free positions of the panel are weighed, which changes a choice only where they do not suffice. Names, parts and
work are of all openings together, and are worked out after every choice is made.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import TypeVar

from latchside.collector import without_collector
from latchside.figures.catalogue import Figure
from latchside.library.model import Library
from latchside.planning.at_opening import AtOpening
from latchside.planning.cautions import cautions
from latchside.planning.choose import NONE_LEFT, choice_problems, choose
from latchside.planning.failing import failing, worst
from latchside.planning.house import House, house_of, rules_of
from latchside.planning.items import items
from latchside.planning.names import Name, contacts, names
from latchside.planning.opening_figures import opening_figures
from latchside.planning.plan import (
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
from latchside.planning.positions import Wanted, assigned
from latchside.planning.questions import questions
from latchside.planning.service import services
from latchside.planning.short_names import Limit, limit_of
from latchside.planning.site_figures import site_figures
from latchside.planning.site_problems import site_problems, taken_over
from latchside.planning.work import Work, work
from latchside.planning.zone_problems import zone_problems
from latchside.planning.zones import zones
from latchside.surveys.survey import Opening, Override, Survey
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


@without_collector()
def make_plan(survey: Survey, library: Library, figures: Mapping[str, Figure], on: date) -> Plan:
    """The plan for a survey, made for the day `on`."""
    house = house_of(library)
    rules = rules_of(survey.rules, house)
    limit = limit_of(survey.control_unit, house)
    chosen, amiss = _chosen(survey, library, figures, on, house, limit)
    asked = _asked(chosen, survey, lambda of: questions(of, library, figures, on, house))
    parts = [one.at for one in chosen]
    lines = {one.at.opening.id: one.worked[0] for one in chosen}
    over = taken_over(survey.control_unit)
    done = work(parts, lines, len(asked), library, house, rules, taken_over=over)
    warned = cautions(survey, parts, library, house)
    plans = _openings(chosen, done, warned)
    schedule = zones(survey, plans, library)
    of_site = site_figures(survey, plans, figures, house)
    problems = [*amiss, *zone_problems(survey, plans, [one.name for one in chosen], schedule, house), *done.problems]
    problems += _without(plans, asked, {one.about for one in amiss if one.code in (UNKNOWN, NONE_LEFT)})
    problems += [*site_problems(survey), *failing(plans, of_site)]
    tools = dict.fromkeys(id_ for stage in done.stages for id_ in stage.procedures)
    return Plan(
        survey=survey,
        on=on,
        library=library_version(),
        openings=plans,
        questions=asked,
        problems=_by_walk(problems, survey),
        zones=schedule,
        site_figures=of_site,
        items=items(survey, parts, tools, library, house, rules),
        work=done.stages,
        service=services(plans, rules, house, on),
        cautions=warned,
        days=done.days,
    )


def _asked(
    chosen: Sequence[_Chosen], survey: Survey, ask: Callable[[Survey], tuple[Question, ...]]
) -> tuple[Question, ...]:
    """The questions of a survey; of an opening that was moved for want of positions, those of its new class too."""
    asked = ask(survey)
    moved = {
        one.at.opening.id: Override(one.choice.device, one.choice.moved)
        for one in chosen
        if one.choice.moved and one.choice.device and one.at.opening.override is None
    }
    if not moved:
        return asked
    openings = tuple(replace(one, override=moved.get(one.id, one.override)) for one in survey.openings)
    known = {(one.about, one.field) for one in asked}
    more = [one for one in ask(replace(survey, openings=openings)) if (one.about, one.field) not in known]
    return _by_walk([*asked, *more], survey)


def _chosen(
    survey: Survey, library: Library, figures: Mapping[str, Figure], on: date, house: House, limit: Limit
) -> tuple[list[_Chosen], list[Problem]]:
    named = names(survey.openings, limit, survey.control_unit.zones_in_use)
    wanted, problems = [], list[Problem]()
    for opening, name in zip(survey.openings, named, strict=True):
        choice = choose(opening, survey.site, survey.control_unit, library)
        if choice.device and library.find("device", choice.device) is None:
            problems.append(_unknown(opening.id, choice.device))
            choice = replace(choice, device=None)
        wanted.append(Wanted(opening, name.spoken, choice))

    def worked(opening: Opening, choice: Choice) -> Worked:
        device, contact = (library.find("device", id_) if id_ else None for id_ in (choice.device, choice.contact))
        return opening_figures(opening, device, survey, figures, on, house, contact) if device else ((), (), None)

    choices, short = assigned(
        wanted, survey.control_unit, library, lambda opening, choice: worst(worked(opening, choice)[0])
    )
    problems.extend(short)
    found = []
    for one, name, choice in zip(wanted, named, choices, strict=True):
        problems.extend(choice_problems(one.opening, choice, library))
        device, contact = (library.find("device", id_) if id_ else None for id_ in (choice.device, choice.contact))
        at = AtOpening(one.opening, device, name.spoken, contact, choice.shared)
        found.append(_Chosen(at, name, choice, worked(one.opening, choice)))
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
        zones=one.at.zones,
        input=one.at.input,
        fixing=fixing,
        figures=lines,
        expected=expected,
        cautions=warned,
        stages=stages,
        contact_names=one.name.contacts,
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


About = TypeVar("About", Problem, Question)


def _by_walk(found: Sequence[About], survey: Survey) -> tuple[About, ...]:
    """What concerns the whole site first, then by the walk."""
    rank = {"site": -2, "control-unit": -1} | {one.id: number for number, one in enumerate(survey.openings)}
    return tuple(sorted(found, key=lambda one: rank.get(one.about, -3)))
