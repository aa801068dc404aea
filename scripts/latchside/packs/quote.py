"""Hours for a quote, at best, usually and at worst, by what they go to. Prices are the firm's own."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from latchside.packs.words import minutes
from latchside.planning.on_site import ARRIVE
from latchside.planning.plan import Plan, Stage
from latchside.planning.times import NONE, Span, total

BEFORE, TOGETHER = "before", "together"
"""What is done before the first arrival; and the time in which several are on site and one works."""


@dataclass(frozen=True)
class Hours:
    """What the time goes to: `before`, the site, the panel, an opening by its id, `together`, or empty for all."""

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
    yield from (_hours(about, _work(stages)) for about, stages in spent.items() if stages)
    worked, there = _work(plan.work), _presence(plan, _work(spent[BEFORE]))
    beside = Span(
        *(max(0.0, one) for one in (there.low - worked.low, there.usual - worked.usual, there.high - worked.high))
    )
    if beside != NONE:
        yield _hours(TOGETHER, beside)
    yield _hours("", worked + beside)


def paid(plan: Plan) -> str:
    """The usual hours of all technicians, from preparing to leaving."""
    return list(quote(plan))[-1].usual


def _presence(plan: Plan, before: Span) -> Span:
    """The time of everybody who comes, each there from arriving to leaving."""
    days = total(Span(day.low, day.minutes, day.high) for day in plan.days)
    return before + days.scaled(plan.survey.rules.technicians or 1)


def _work(stages: Iterable[Stage]) -> Span:
    return total(Span(one.low, one.minutes, one.high) for one in stages)


def _hours(about: str, time: Span) -> Hours:
    return Hours(about, *(minutes(span) for span in (time.low, time.usual, time.high)))
