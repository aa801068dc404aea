"""A figure that fails is a problem, always: what fails, and what to order or change instead."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from latchside.figures.rounding import joined
from latchside.library.alike import alike
from latchside.planning.plan import Line, OpeningPlan, Problem, Verdict

CODE = "figure-fails"
_ORDER: tuple[Verdict, ...] = ("poor", "test on site", "good", "none")
_ACTIONS = {
    "reed-gap": (
        "Order a contact whose label is sure of this, or have hinge, latch or keep adjusted first and measure again."
    ),
    "spacer": "Order spacers or a bracket for this step, or choose another place or another contact.",
    "radio-margin": (
        "Run a cable, or order a repeater or a receiver nearer to it, or a device of the frequency that the receiver "
        "takes."
    ),
    "cable-resistance": "Order a thicker cable, or choose an input nearer to it, or a transmitter at the opening.",
    "loop-states": "Choose resistors, layout or input so that the panel tells open from closed, by its document.",
    "cell-life": "Choose a wired contact, or order a device with a larger battery for so many openings a day.",
    "missed-check-in": "Choose a device that checks in more often, or a wired contact.",
    "standby-battery": "Order a supply of its own with its own battery, or take load off the panel.",
    "ladder": "Order access equipment for this height, with people trained on it.",
}
"""What to order or change where a figure does not say so itself, by the id of the figure."""
_ANY = "Choose another part or another place for it, or have the cause changed before the day."


OF_CLASS = frozenset({"missed-check-in"})
"""Figures that class and site decide: one that fails is the same problem at every opening with that class."""


def failing(plans: Sequence[OpeningPlan], of_site: Iterable[Line]) -> Iterator[Problem]:
    """A problem for each figure that is poor, of the site first; one where the class fails at several openings."""
    yield from (_problem("site", line) for line in of_site if line.verdict == "poor")
    poor = [(plan, line) for plan in plans for line in plan.figures if line.verdict == "poor"]
    same = alike(poor, lambda one: (one[0].choice.device, one[1].name, one[1].shown, one[1].meaning, one[1].action))
    for plan, line in poor:
        key = plan.choice.device, line.name, line.shown, line.meaning, line.action
        where = [other for other, _ in same[key]] if line.figure in OF_CLASS else [plan]
        if len(where) == 1:
            yield _problem(plan.opening.id, line)
        elif where[0] is plan:
            yield _at_several(where, line)


def _at_several(plans: Sequence[OpeningPlan], line: Line) -> Problem:
    one = _problem("site", line)
    words = f"{one.found} It is the same at {joined([plan.spoken for plan in plans])}."
    return replace(one, found=words, openings=tuple(plan.opening.id for plan in plans))


def _problem(about: str, line: Line) -> Problem:
    action = line.action or _ACTIONS.get(line.figure, _ANY)
    return Problem(about, CODE, f"{line.name}: {line.shown}. {line.meaning}", action)


def worst(lines: Sequence[Line]) -> Mapping[str, Verdict]:
    """The worst verdict of each figure, by its id."""
    found: dict[str, Verdict] = {}
    for line in lines:
        found[line.figure] = min(found.get(line.figure, line.verdict), line.verdict, key=_ORDER.index)
    return found
