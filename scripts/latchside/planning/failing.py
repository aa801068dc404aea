"""A figure that fails is a problem, always: what fails, and what to order or change instead."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from latchside.library.alike import alike
from latchside.messages import listed, messages
from latchside.planning.plan import Line, OpeningPlan, Problem, Verdict

message = messages(__name__)
CODE = "figure-fails"
_ORDER: tuple[Verdict, ...] = ("poor", "test on site", "good", "none")
OF_CLASS = frozenset({"missed-check-in"})
"""Figures that class and site decide: one that fails is the same problem at every opening with that class."""


def failing(plans: Sequence[OpeningPlan], of_site: Iterable[Line]) -> Iterator[Problem]:
    """A problem for each figure that is poor, of the site first; one where the class fails at several openings.

    Check-ins that are too seldom for the likeliest grade are one problem of the site, because its grade decides the
    order.
    """
    yield from (_problem("site", line) for line in of_site if line.verdict == "poor")
    yield from _too_seldom(plans)
    poor = [(plan, line) for plan in plans for line in plan.figures if line.verdict == "poor"]
    same = alike(poor, lambda one: (one[0].choice.device, one[1].name, one[1].shown, one[1].meaning, one[1].action))
    for plan, line in poor:
        key = plan.choice.device, line.name, line.shown, line.meaning, line.action
        where = [other for other, _ in same[key]] if line.figure in OF_CLASS else [plan]
        if len(where) == 1:
            yield _problem(plan.opening.id, line)
        elif where[0] is plan:
            yield _at_several(where, line)


def _too_seldom(plans: Sequence[OpeningPlan]) -> Iterator[Problem]:
    """What the grade, which is not known, decides of the radio: asked before anything is ordered."""
    likely = [
        (plan, line)
        for plan in plans
        for line in plan.figures
        if line.figure in OF_CLASS and line.verdict == "test on site" and line.action
    ]
    if likely:
        _, line = likely[0]
        names = listed([one.spoken for one, _ in likely], "unit")
        found = message("grade-not-known.found", shown=line.shown, count=len(likely), openings=names)
        yield Problem("site", "grade-not-known", found, message("grade-not-known.action", then=line.action))


def _at_several(plans: Sequence[OpeningPlan], line: Line) -> Problem:
    one = _problem("site", line)
    found = message("at-several", found=one.found, openings=listed([plan.spoken for plan in plans]))
    return replace(one, found=found, openings=tuple(plan.opening.id for plan in plans))


def _problem(about: str, line: Line) -> Problem:
    change = f"change-{line.figure}"
    action = line.action or message(change if change in message else "change-any")
    return Problem(about, CODE, message("fails", figure=line.name, shown=line.shown, meaning=line.meaning), action)


def worst(lines: Sequence[Line]) -> Mapping[str, Verdict]:
    """The worst verdict of each figure, by its id."""
    found: dict[str, Verdict] = {}
    for line in lines:
        found[line.figure] = min(found.get(line.figure, line.verdict), line.verdict, key=_ORDER.index)
    return found
