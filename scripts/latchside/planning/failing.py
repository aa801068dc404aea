"""A figure that fails is a problem, always: what fails, and what to order or change instead."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

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


def failing(plans: Iterable[OpeningPlan], of_site: Iterable[Line]) -> Iterator[Problem]:
    """A problem for each figure that is poor, of the site first."""
    yield from (_problem("site", line) for line in of_site if line.verdict == "poor")
    for plan in plans:
        yield from (_problem(plan.opening.id, line) for line in plan.figures if line.verdict == "poor")


def _problem(about: str, line: Line) -> Problem:
    action = line.action or _ACTIONS.get(line.figure, _ANY)
    return Problem(about, CODE, f"{line.name}: {line.shown}. {line.meaning}", action)


def worst(lines: Sequence[Line]) -> Mapping[str, Verdict]:
    """The worst verdict of each figure, by its id."""
    found: dict[str, Verdict] = {}
    for line in lines:
        found[line.figure] = min(found.get(line.figure, line.verdict), line.verdict, key=_ORDER.index)
    return found
