"""The order of work as a reader follows it: day by day, and in each day one opening after the other."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby

from latchside.pages import job_words as words
from latchside.planning.plan import Stage
from latchside.planning.work import ARRIVE


def rounds(work: Sequence[Stage], about: Callable[[str], str]) -> list[tuple[str, str, str, list[Stage]]]:
    """Pieces of work that stand together, each with an anchor, its title, its time in words, and its pieces.

    What is done before the first arrival is no part of a day. `about` names an opening or the site.
    """
    dated = list(_dated(work))
    several = max((day for day, _ in dated), default=0) > 1
    found: list[tuple[str, str, str, list[Stage]]] = []
    for number, ((day, where), run) in enumerate(groupby(dated, key=lambda one: (one[0], one[1].about)), 1):
        pieces = [one for _, one in run]
        title = (
            f"Day {day}, {_inside(about(where))}" if several and day else about(where) if day else "Before the visit"
        )
        found.append((f"round-{number}", title, words.minutes(sum(one.minutes for one in pieces)), pieces))
    return found


def _dated(work: Sequence[Stage]) -> Iterator[tuple[int, Stage]]:
    """Each piece with the number of its day: a day begins with the arrival."""
    day = 0
    for one in work:
        day += one.procedures == (ARRIVE,)
        yield day, one


def _inside(name: str) -> str:
    """A name inside a line: “The site” begins one no longer."""
    return name[0].lower() + name[1:] if name.startswith("The ") else name
