"""How high work is reached where a leaning ladder does not do."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from latchside.messages import messages
from latchside.planning.at_opening import AtOpening
from latchside.planning.figures_for.shown import say
from latchside.planning.house import House, Rules
from latchside.planning.plan import Problem, problem
from latchside.surveys.survey import Opening

message = messages(__name__)
OVERHEAD = frozenset({"roof-window", "hatch"})
"""Kinds that, once they are high, are worked at with both hands above the head, where a ladder has nothing to lean on:
common practice."""


def overhead(opening: Opening) -> bool:
    """Whether it is worked at overhead."""
    return opening.kind in OVERHEAD


def takes_platform(opening: Opening, house: House) -> bool:
    """Whether the work is overhead, above what is done from the floor and not too high for a platform."""
    height = opening.height_m or 0.0
    return overhead(opening) and house["ladder-height"] < height <= house["ladder-most"]


def takes_second(opening: Opening, house: House) -> bool:
    """Whether nobody works there alone: from a platform, or higher than a ladder is used for."""
    return (opening.height_m or 0.0) > house["ladder-most"] or takes_platform(opening, house)


def alone_overhead(parts: Sequence[AtOpening], rules: Rules, house: House) -> Iterator[Problem]:
    """Work from a platform or a tower takes a second person, and there is one technician."""
    if rules.technicians > 1:
        return
    for part in parts:
        if part.fitted and takes_second(part.opening, house):
            yield problem(message, part.opening.id, "second-person", height=say(part.opening.height_m or 0.0, "m"))
