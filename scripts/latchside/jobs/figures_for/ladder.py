"""Where the work is high: how far the foot of a leaning ladder stands out."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.jobs.figures_for.context import Context
from latchside.jobs.figures_for.shown import say, up
from latchside.jobs.plan import Line

LADDER_M = 1.8
"""Height above which work takes a ladder, where the firm has no rule of its own."""
_ASSUMED = "The top support of the ladder is at the height of the work."


def ladder(context: Context) -> Iterator[Line]:
    """The set-back, for work above the height of the house rule."""
    height = context.opening.height_m
    if height is None or height <= context.rule("ladder-height", LADDER_M):
        return
    inputs = {"support_height_m": up(max(height, 1.0), 0.1)}
    answer = context.answer("ladder", inputs)
    if answer is None:
        meaning = "Higher than a leaning ladder reaches. A tower or a platform is needed, with people trained on it."
        yield Line("Ladder", "no leaning ladder", "poor", meaning, "ladder", inputs)
        return
    out, long = up(answer["setback_m"], 0.05), up(answer["ladder_length_m"], 0.1)
    shown = f"foot {say(out, 'm')} out, ladder of at least {say(long, 'm')}"
    meaning = (
        f"One out for four along the ladder, an angle of {say(answer['angle_deg'], 'deg')}. The top rungs are not "
        "stood on, so the ladder is longer than this. A stepladder or a platform comes first."
    )
    yield Line("Ladder", shown, "none", meaning, "ladder", inputs, (_ASSUMED,))
