"""Where the work is high: how far the foot of a leaning ladder stands out, and where no ladder does any more."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.messages import messages
from latchside.planning.access import overhead
from latchside.planning.figures_for.context import Context
from latchside.planning.figures_for.shown import say, up
from latchside.planning.plan import Line

message = messages(__name__)
LADDER_M = 1.8
"""Height above which work takes a ladder, where the firm has no rule of its own."""
LADDER_MOST_M = 4.0
"""Height above which no work is done from a ladder, where the firm has no rule of its own."""
ACCESS = message("access")
"""What the work above that takes."""


def too_high(context: Context) -> bool:
    """The work is above what a ladder can be used for."""
    height = context.opening.height_m
    return height is not None and height > context.rule("ladder-most", LADDER_MOST_M)


def ladder(context: Context) -> Iterator[Line]:
    """The set-back, for work above the height of the house rule; no ladder above the most of it or at a roof window."""
    height = context.opening.height_m
    if height is None or not (too_high(context) or height > context.rule("ladder-height", LADDER_M)):
        return
    inputs = {"support_height_m": up(max(height, 1.0), 0.1)}
    if overhead(context.opening) and not too_high(context):
        yield Line(message("name"), message("no-ladder"), "test on site", message("overhead"), "ladder", inputs)
        return
    answer = context.answer("ladder", inputs)
    if answer is None or too_high(context):
        most = say(context.rule("ladder-most", LADDER_MOST_M), "m")
        meaning = message("too-high", most=most)
        yield Line(message("name"), message("no-ladder"), "poor", meaning, "ladder", inputs, (), message("order"))
        return
    out, long = up(answer["setback_m"], 0.05), up(answer["ladder_length_m"], 0.1)
    shown = message("foot", out=say(out, "m"), long=say(long, "m"))
    meaning = message("angle", angle=say(answer["angle_deg"], "deg"))
    yield Line(message("name"), shown, "none", meaning, "ladder", inputs, (message("support"),))
