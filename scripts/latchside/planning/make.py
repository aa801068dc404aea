"""The whole plan of a job. Pure: the same survey, library and date always give the same plan.

The device of an opening is chosen by the facts of that opening alone. Then the free positions of the panel are
weighed, which changes a choice only where there are too few. Parts and work concern all openings together, and come
after every choice.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import TypeVar

from latchside.collector import without_collector
from latchside.figures.catalogue import Figure
from latchside.library.model import Library
from latchside.messages import messages
from latchside.planning.access import alone_overhead
from latchside.planning.at_opening import AtOpening
from latchside.planning.cautions import bites, cautions
from latchside.planning.choose import NONE_LEFT, choice_problems, choose
from latchside.planning.failing import failing, worst
from latchside.planning.figures_for.magnet import level
from latchside.planning.hours import hours_asked
from latchside.planning.house import House, house_of, rules_of
from latchside.planning.items import items
from latchside.planning.names import Name, contacts, names
from latchside.planning.on_site import Site
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
    problem,
)
from latchside.planning.position_doubts import positions_in_doubt
from latchside.planning.positions import Wanted, assigned
from latchside.planning.questions import questions
from latchside.planning.service import services
from latchside.planning.short_names import Limit, limit_of
from latchside.planning.site_figures import site_figures
from latchside.planning.site_problems import agreed_first, foreign_magnet, site_problems, taken_over
from latchside.planning.work import Work, work
from latchside.planning.zone_problems import zone_problems
from latchside.planning.zones import zones
from latchside.surveys.survey import Opening, Override, Survey
from latchside.version import library_version

message = messages(__name__)
UNKNOWN = "unknown-device"
Worked = tuple[tuple[Line, ...], tuple[Expected, ...], Fixing | None]


@dataclass(frozen=True)
class _Chosen:
    """One opening with its name, its choice, and the figures that follow from these alone."""

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
    chosen, problems = _chosen(survey, library, figures, on, house, limit)
    told = {one.about for one in problems if one.code in (UNKNOWN, NONE_LEFT)}
    asked = _asked(chosen, survey, lambda of: questions(of, library, figures, on, house))
    parts = [one.at for one in chosen]
    asked = _by_walk([*asked, *hours_asked(survey, parts)], survey)
    lines = {one.at.opening.id: one.worked[0] for one in chosen}
    stages = work(parts, lines, len(asked), library, house, rules, site=_site(survey))
    warnings = cautions(survey, parts, library, house)
    plans = _openings(chosen, stages, warnings)
    schedule = zones(survey, plans, library)
    of_site = site_figures(survey, plans, figures, house)
    problems += [*zone_problems(survey, plans, [one.name for one in chosen], schedule, house), *stages.problems]
    problems += [*_without_device(plans, asked, told), *site_problems(survey)]
    problems += foreign_magnet(survey, parts)
    problems += [*agreed_first(survey, warnings), *alone_overhead(parts, rules, house)]
    problems = [*failing(plans, of_site), *positions_in_doubt(survey.control_unit, plans, schedule), *problems]
    procedures = dict.fromkeys(id_ for stage in stages.stages for id_ in stage.procedures)
    return Plan(
        survey=survey,
        on=on,
        library=library_version(),
        openings=plans,
        questions=asked,
        problems=_by_walk(problems, survey),
        zones=schedule,
        site_figures=of_site,
        items=items(survey, parts, procedures, warnings, library, house, rules),
        work=stages.stages,
        service=services(plans, rules, house, on),
        cautions=warnings,
        days=stages.days,
    )


def _site(survey: Survey) -> Site:
    """What the site asks of the work."""
    site, unit = survey.site, survey.control_unit
    return Site(taken_over(unit), unit.zones_in_use, site.monitored, site.notes)


def _asked(
    chosen: Sequence[_Chosen], survey: Survey, ask: Callable[[Survey], tuple[Question, ...]]
) -> tuple[Question, ...]:
    """The questions of a survey, with those of the new class of an opening that was moved for want of positions."""
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
            problems.append(problem(message, opening.id, UNKNOWN, device=choice.device))
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
        figures_there = worked(one.opening, choice)
        at = AtOpening(one.opening, device, name.spoken, contact, choice.shared, level=level(figures_there[0]))
        found.append(_Chosen(at, name, choice, figures_there))
    return found, problems


def _openings(chosen: Sequence[_Chosen], stages: Work, warnings: Sequence[Caution]) -> tuple[OpeningPlan, ...]:
    at: dict[str, list[str]] = {}
    for caution in warnings:
        for about in caution.about:
            at.setdefault(about, []).append(caution.caution)
    return tuple(
        replace(
            _opening(one, tuple(at.get(one.at.opening.id, ())), stages.of_opening.get(one.at.opening.id, ())),
            bites=bites(warnings, one.at.opening.id),
        )
        for one in chosen
    )


def _opening(one: _Chosen, cautions_there: tuple[str, ...], stages: tuple[Stage, ...]) -> OpeningPlan:
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
        cautions=cautions_there,
        stages=stages,
        contact_names=one.name.contacts,
    )


def _without_device(plans: Sequence[OpeningPlan], asked: Sequence[Question], told: set[str]) -> Iterator[Problem]:
    """A problem for each opening without a device, but for those in `told`, which have one that says why."""
    waiting = {one.about for one in asked}
    for plan in plans:
        id_ = plan.opening.id
        if plan.choice.device is None and id_ not in told:
            asks = "yes" if id_ in waiting else "no"
            yield problem(message, id_, "no-device", opening=plan.spoken, questions=asks)


About = TypeVar("About", Problem, Question)


def _by_walk(found: Sequence[About], survey: Survey) -> tuple[About, ...]:
    """Problems or questions: those of the whole site first, then in the order of the walk."""
    rank = {"site": -2, "control-unit": -1} | {one.id: number for number, one in enumerate(survey.openings)}
    return tuple(sorted(found, key=lambda one: rank.get(one.about, -3)))
