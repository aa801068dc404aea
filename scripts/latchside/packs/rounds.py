"""The order of work as a reader follows it: day by day, and in each day one opening after the other."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby

from latchside.messages import messages
from latchside.packs import words
from latchside.planning.on_site import ARRIVE
from latchside.planning.plan import Stage

message = messages(__name__)


def rounds(
    work: Sequence[Stage], about: Callable[[str], str], about_inside: Callable[[str], str]
) -> list[tuple[str, str, list[Stage]]]:
    """Pieces of work that stand together: an anchor, a title with their time, and the pieces.

    What is done before the first arrival is no part of a day. `about` names an opening or the site, `about_inside`
    does so within a line.
    """
    dated = list(_dated(work))
    several = max((day for day, _ in dated), default=0) > 1
    result: list[tuple[str, str, list[Stage]]] = []
    for number, ((day, where), run) in enumerate(groupby(dated, key=lambda one: (one[0], one[1].about)), 1):
        pieces = [one for _, one in run]
        time = words.minutes(sum(one.minutes for one in pieces))
        if not day:
            title = message("before", time=time)
        elif several:
            title = message("of-day", day=day, place=about_inside(where), time=time)
        else:
            title = message("of-place", place=about(where), time=time)
        result.append((f"round-{number}", title, pieces))
    return result


def _dated(work: Sequence[Stage]) -> Iterator[tuple[int, Stage]]:
    """Each piece with the number of its day: a day begins with the arrival."""
    day = 0
    for one in work:
        day += one.procedures == (ARRIVE,)
        yield day, one
