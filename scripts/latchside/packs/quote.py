"""Hours for a quote, at best, usually and at worst, by what they go to. Prices are the firm's own."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from latchside.packs.words import minutes
from latchside.planning.on_site import ARRIVE
from latchside.planning.plan import Plan, Stage
from latchside.planning.times import Span, total

BEFORE = "before"
"""What is done before the first arrival."""


@dataclass(frozen=True)
class Hours:
    """What the time goes to: `before`, the site, the panel, an opening by its id, or empty for all of it."""

    about: str
    low: str
    usual: str
    high: str


def quote(plan: Plan) -> Iterator[Hours]:
    """Each part of the work in the order of the walk, that of the site and the panel last, then all of it."""
    spent: dict[str, list[Stage]] = {about: [] for about in (BEFORE, *(one.opening.id for one in plan.openings))}
    arrived = False
    for one in plan.work:
        arrived = arrived or one.procedures == (ARRIVE,)
        spent.setdefault(one.about if arrived else BEFORE, []).append(one)
    yield from (_hours(about, stages) for about, stages in spent.items() if stages)
    yield _hours("", plan.work)


def _hours(about: str, stages: Iterable[Stage]) -> Hours:
    time = total(Span(one.low, one.minutes, one.high) for one in stages)
    return Hours(about, *(minutes(span) for span in (time.low, time.usual, time.high)))
