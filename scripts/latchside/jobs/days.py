"""Openings laid into days: whole openings only, over as many technicians as there are."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from latchside.figures.rounding import short
from latchside.jobs.plan import Day, Problem


@dataclass(frozen=True)
class Times:
    """Minutes to arrive and to leave each day, to close the job on its last, and of a day; and who is there."""

    arrive: int
    leave: int
    close: int
    day: int
    technicians: int


@dataclass(frozen=True)
class Laid:
    """The days, and the openings that are longer than one."""

    days: tuple[Day, ...]
    problems: tuple[Problem, ...]


def lay(openings: Sequence[tuple[str, float]], times: Times) -> Laid:
    """Each opening, in order, goes to the technician who is free first; one that does not fit begins the next day.

    The close of the job, with all zones proved and handed over, is one technician's work at the end of the last day,
    or of a day of its own where that is full.
    """
    room = times.day - times.arrive - times.leave
    days: list[tuple[list[str], list[float]]] = []
    problems = []
    for id_, minutes in openings:
        if minutes > room:
            problems.append(_too_long(id_, minutes, times))
        busy = days[-1][1] if days else None
        if busy is None or (min(busy) + minutes > room and any(busy)):
            days.append(([], [0.0] * times.technicians))
        ids, busy = days[-1]
        ids.append(id_)
        busy[busy.index(min(busy))] += minutes
    if days and max(days[-1][1]) + times.close > room and any(days[-1][1]):
        days.append(([], [0.0] * times.technicians))
    return Laid(tuple(_day(index, days, times) for index in range(len(days))), tuple(problems))


def _day(index: int, days: Sequence[tuple[list[str], list[float]]], times: Times) -> Day:
    ids, busy = days[index]
    last = index == len(days) - 1
    minutes = times.arrive + max(busy) + (times.close if last else 0) + times.leave
    who = "one technician" if times.technicians == 1 else f"{times.technicians} technicians"
    what = f"{len(ids)} {'opening' if len(ids) == 1 else 'openings'}" if ids else "proof and handover"
    more = ", proof and handover" if last and ids else ""
    return Day(index + 1, tuple(ids), minutes, f"{what[:1].upper()}{what[1:]}{more}, {who}, {short(minutes, 'min')}.")


def _too_long(id_: str, minutes: float, times: Times) -> Problem:
    return Problem(
        id_, "longer-than-a-day",
        f"{short(minutes, 'min')} at this opening do not fit into a day of {short(times.day, 'min')} on site.",
        "Send another technician, or agree with the people on site who watches it overnight.",
    )  # fmt: skip
