"""Where the work is high: how far the foot of a leaning ladder stands out, and where no ladder does any more."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.planning.figures_for.context import Context
from latchside.planning.figures_for.shown import say, up
from latchside.planning.plan import Line

LADDER_M = 1.8
"""Height above which work takes a ladder, where the firm has no rule of its own."""
LADDER_MOST_M = 4.0
"""Height above which no work is done from a ladder, where the firm has no rule of its own."""
ACCESS = "a tower or a powered platform"
"""What the work above that takes."""
_ASSUMED = "The top support of the ladder is at the height of the work."
_ORDER = (
    f"Order {ACCESS}, with people trained on it, and check that it goes in and stands level there. Local law decides "
    "who may use it, and whether a ladder may be used at all."
)


def too_high(context: Context) -> bool:
    """The work is above what a ladder can be used for."""
    height = context.opening.height_m
    return height is not None and height > context.rule("ladder-most", LADDER_MOST_M)


def ladder(context: Context) -> Iterator[Line]:
    """The set-back, for work above the height of the house rule; no ladder above the most of it."""
    height = context.opening.height_m
    if height is None or height <= context.rule("ladder-height", LADDER_M):
        return
    inputs = {"support_height_m": up(max(height, 1.0), 0.1)}
    answer = context.answer("ladder", inputs)
    if answer is None or too_high(context):
        most = say(context.rule("ladder-most", LADDER_MOST_M), "m")
        meaning = f"Work with both hands above {most} is not done from a ladder, by house rule. It takes {ACCESS}."
        yield Line("Ladder", "no leaning ladder", "poor", meaning, "ladder", inputs, (), _ORDER)
        return
    out, long = up(answer["setback_m"], 0.05), up(answer["ladder_length_m"], 0.1)
    shown = f"foot {say(out, 'm')} out, ladder of at least {say(long, 'm')}"
    meaning = (
        f"One out for four along the ladder, an angle of {say(answer['angle_deg'], 'deg')}. The top rungs are not "
        "stood on, so the ladder is longer than this. A stepladder or a platform comes first."
    )
    yield Line("Ladder", shown, "none", meaning, "ladder", inputs, (_ASSUMED,))
