"""What a reader would notice of an opening's plan, as values that can be compared.

An outcome is made of pieces, by the same functions that make the plan: first the choice, then what follows from it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import partial
from typing import Any

from latchside.figures.catalogue import Figure
from latchside.library.model import Library
from latchside.planning.at_opening import AtOpening
from latchside.planning.cautions import cautions
from latchside.planning.choose import choice_problems, classes
from latchside.planning.figures_for.context import Context, Device
from latchside.planning.house import House, rules_of
from latchside.planning.items import items
from latchside.planning.looked_at import Kept, Key, looked
from latchside.planning.names import contacts
from latchside.planning.opening_figures import Worker, opening_figures, worked
from latchside.planning.plan import Choice, Fixing, Line, OpeningPlan
from latchside.planning.zones import zones
from latchside.surveys.survey import ControlUnit, JobRules, Opening, Site, Survey

OPENING, SITE, UNIT = 0, 1, 2
Pieces = Mapping[str, Callable[..., Any]]
"""What works each piece of an outcome, by its name."""
Facts = tuple[Opening, Site, ControlUnit, JobRules]
"""An opening, its site, the control unit and the house rules of the job."""
_MOST = 2_000
"""Openings whose questions are kept for the next plan."""


@dataclass(frozen=True)
class Chosen:
    """The class for an opening, that of the contact on its loop, and what stands against them, by code."""

    device: str | None
    contact: str | None
    problems: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Figures:
    """The verdict of each figure by its name, the fixing, and the lines themselves, which are not compared."""

    verdicts: tuple[tuple[str, str], ...]
    fixing: Fixing | None
    lines: tuple[Line, ...] = field(default=(), compare=False)


@dataclass(frozen=True)
class Done:
    """What a worker of the lines found, and what of it a reader would notice or the fixing hangs on."""

    found: tuple[Any, ...]
    marks: tuple[tuple[str, str, str], ...]


def _done(found: tuple[Any, ...]) -> Done:
    lines = [one for one in found if isinstance(one, Line)]
    return Done(found, tuple((one.name, one.verdict, one.shown if one.figure == "spacer" else "") for one in lines))


def facts_of(opening: Opening, survey: Survey) -> Facts:
    """The facts of an opening; its names and notes are none."""
    bare = replace(opening, id="", place="", side="", spoken="", notes="")
    return bare, survey.site, survey.control_unit, survey.rules


def alone(facts: tuple[Any, ...]) -> Survey:
    """A survey of one opening."""
    opening, site, unit, rules = facts
    return Survey("", "", (opening,), site=site, control_unit=unit, rules=rules)


class Outcomes:
    """Outcomes of openings, with one library, one set of figures, one day and one house."""

    def __init__(self, library: Library, figures: Mapping[str, Figure], on: date, house: House) -> None:
        self.library, self.figures, self.on, self.house = library, figures, on, house
        self._rules = rules_of(JobRules(), house)
        self._pieces: dict[tuple[str | None, str | None], Pieces] = {}
        self._workers: dict[tuple[Worker, Device, Device | None], Kept[Done]] = {}
        self._asked: dict[Facts, tuple[Any, ...]] = {}

    def asked(self, facts: Facts, work: Callable[[], tuple[Any, ...]]) -> tuple[Any, ...]:
        """What is asked of an opening with these facts, worked at the first plan that meets them."""
        found = self._asked.get(facts)
        if found is None:
            if len(self._asked) >= _MOST:
                self._asked.clear()
            found = self._asked[facts] = work()
        return found

    def choice(self, *facts: Any) -> Chosen:
        """The class for an opening."""
        opening = facts[OPENING]
        device, contact = classes(opening, self.library)
        if device is not None and self.library.find("device", device) is None:
            device = contact = None
        choice = Choice(device, (), (), (), contact=contact)
        found = choice_problems(opening, choice, self.library)
        return Chosen(device, contact, tuple((one.code, one.found) for one in found))

    def pieces(self, chosen: Chosen) -> Pieces:
        """What works each piece that comes after a choice, from what decides most to what decides least."""
        key = chosen.device, chosen.contact
        if key not in self._pieces:
            works = {"parts": self._parts, "zones": self._zones, "cautions": self._cautions}
            kept = {name: Kept(partial(work, chosen)) for name, work in works.items()}
            self._pieces[key] = {"figures": partial(self._figures, chosen), **kept}
        return self._pieces[key]

    def plan(self, opening: Opening, chosen: Chosen, lines: tuple[Line, ...]) -> OpeningPlan:
        """As much of the plan of an opening as the zones and the figures of the site hang on."""
        at = self._at(chosen, opening)
        choice = Choice(chosen.device, (), (), (), contact=chosen.contact)
        return OpeningPlan(opening, at.spoken, choice, contacts(opening), at.zones, at.input, None, lines, (), (), ())

    def _at(self, chosen: Chosen, opening: Opening) -> AtOpening:
        device, contact = (self.library.find("device", id_) if id_ else None for id_ in (chosen.device, chosen.contact))
        return AtOpening(opening, device, "", contact)

    def workers(self, chosen: Chosen, facts: Facts) -> tuple[Figures, frozenset[Key], tuple[Kept[Done], ...]]:
        """The figures of an opening; the facts that are looked at beside the workers; and the workers themselves."""
        met: dict[Kept[Done], None] = {}

        def tried(work: Worker, context: Context) -> tuple[Any, ...]:
            kept = self._kept(work, context)
            met[kept] = None
            return kept(*facts).found

        found, looks = looked(lambda *watched: self._worked(chosen, watched, tried), *facts)
        return found, looks, tuple(met)

    def _figures(self, chosen: Chosen, *facts: Any) -> Figures:
        return self._worked(chosen, facts, lambda work, context: self._kept(work, context)(*facts).found)

    def _worked(
        self, chosen: Chosen, facts: tuple[Any, ...], tried: Callable[[Worker, Context], tuple[Any, ...]]
    ) -> Figures:
        at = self._at(chosen, facts[OPENING])
        if at.device is None:
            return Figures((), None)
        lines, _, fixing = opening_figures(
            at.opening, at.device, alone(facts), self.figures, self.on, self.house, at.contact, tried=tried
        )
        return Figures(tuple((line.name, line.verdict) for line in lines), fixing, lines)

    def _kept(self, work: Worker, context: Context) -> Kept[Done]:
        """A worker of the lines of a device, which keeps what it finds."""
        key = (work, context.device, context.contact)
        if key not in self._workers:
            bare = replace(context, opening=_NOBODY, survey=Survey("", "", ()))
            self._workers[key] = Kept(
                lambda *facts: _done(worked(work, replace(bare, opening=facts[OPENING], survey=alone(facts))))
            )
        return self._workers[key]

    def _parts(self, chosen: Chosen, *facts: Any) -> tuple[tuple[str, float], ...]:
        survey, parts = alone(facts), [self._at(chosen, facts[OPENING])]
        warnings = cautions(survey, parts, self.library, self.house)
        found = items(survey, parts, (), warnings, self.library, self.house, self._rules)
        return tuple((one.name, one.quantity) for one in found)

    def _zones(self, chosen: Chosen, *facts: Any) -> tuple[tuple[Any, ...], ...]:
        found = zones(alone(facts), [self.plan(facts[OPENING], chosen, ())], self.library)
        return tuple((one.link, one.response, one.reports, one.chime, one.supervision) for one in found)

    def _cautions(self, chosen: Chosen, *facts: Any) -> frozenset[str]:
        opening = facts[OPENING]
        found = cautions(alone(facts), [self._at(chosen, opening)], self.library, self.house)
        return frozenset(one.caution for one in found if opening.id in one.about)


_NOBODY = Opening("", "", "")
