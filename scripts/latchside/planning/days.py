"""Openings shared out over days and technicians: whole openings only, on as few days as possible.

The order of work is kept where that takes no more days. What has to come last stays on the last day. A day may run
over by the firm's own margin where that saves a whole day, and then says so.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import ceil

from latchside.figures.rounding import short
from latchside.messages import Message, listed, messages
from latchside.planning.plan import Day, Problem, problem
from latchside.planning.times import NONE, Span, total

message = messages(__name__)
SEARCHED, FEW = 20_000, 40
"""The search gives up after so many trials, and is not begun with more pieces than so many."""
LEAST_ROOM = 1.0
"""Minutes for openings that a day counts as having where arriving and leaving use it up: one opening a day."""
_TINY = 1e-9


@dataclass(frozen=True)
class Times:
    """The fixed work of each day and of the last one, the minutes of a day and how many it may run over, and who works.

    `begin` is what the first day takes before any opening, with a take-over where `takes_over`; `panel` is what
    powering the panel down and up takes, on each day on which loops are landed in it. `people` is how many the work
    takes at once, of whom one may be somebody on site who calls out what the panel shows.
    """

    arrive: Span
    leave: Span
    close: Span
    day: int
    technicians: int
    over: int = 0
    panel: Span = NONE
    begin: Span = NONE
    takes_over: bool = False
    people: int = 1


@dataclass(frozen=True)
class Piece:
    """The work at one opening. `panel` where it lands a loop.

    `last` is 1 where it is done after all others, and 2 where it comes on no earlier day than those of 1. `free` is
    when people on site can do without the opening, where that is not at any hour.
    """

    opening: str
    takes: Span
    last: int = 0
    panel: bool = False
    free: str | None = None


@dataclass(frozen=True)
class Laid:
    """The days, and the openings that are longer than one."""

    days: tuple[Day, ...]
    problems: tuple[Problem, ...]


Bin = list[int]
"""The pieces of one technician on one day, each an index in the order of work."""


def lay(pieces: Sequence[Piece], times: Times) -> Laid:
    """The pieces on as few days as they fit into, each day with its arriving and leaving.

    The close of the job comes after all openings, on the last day.
    """
    if not pieces:
        return Laid((), ())
    panel = times.panel.usual if any(one.panel for one in pieces) else 0.0
    left = times.day - times.arrive.usual - times.leave.usual - panel
    problems = tuple(_too_long(one, times, left) for one in pieces if one.takes.usual > left)
    room = max(LEAST_ROOM, left)
    days = _fewest(pieces, times, room)
    if times.over:
        stretched = _fewest(pieces, times, room + times.over)
        days = stretched if len(stretched) < len(days) else days
    return Laid(tuple(_day(index, days, pieces, times) for index in range(len(days))), problems)


def _fewest(pieces: Sequence[Piece], times: Times, room: float) -> list[list[Bin]]:
    """The bins of each technician on each day, for the fewest days that the rules below find."""
    # an opening longer than a day gets a day of its own
    sizes = [min(one.takes.usual, room) for one in pieces]
    wide = times.technicians
    once = min(times.close.usual, room) + min(times.begin.usual, room)  # neither is shared out over days
    count = max(1, ceil((sum(sizes) / wide + once) / room - _TINY))
    while True:
        packed = _packed(sizes, [one.last for one in pieces], _rooms(count, times, room), wide)
        if packed is not None:
            days = [packed[start : start + wide] for start in range(0, count * wide, wide)]
            return _in_order([_shared(day, sizes) for day in days], pinned=1 if times.begin.usual else 0)
        count += 1


def _rooms(days: int, times: Times, room: float) -> list[float]:
    """The minutes that each technician has for openings on each day, less the extra work of the first and last day."""
    rooms = [room] * days
    rooms[0] -= times.begin.usual
    rooms[-1] -= times.close.usual
    return [max(0.0, one) for one in rooms for _ in range(times.technicians)]


def _packed(sizes: Sequence[float], last: Sequence[int], rooms: Sequence[float], wide: int) -> list[Bin] | None:
    """A bin for each room, or None. In the order of work if that fits, else the longest first, else by search.

    A day is `wide` rooms. The search keeps nothing last.
    """
    in_order = [index for index in range(len(sizes)) if not last[index]]
    longest = sorted(in_order, key=lambda index: -sizes[index])
    for order in (in_order, longest):
        bins: list[Bin] = [[] for _ in rooms]
        left = list(rooms)
        if _pinned(last, sizes, left, bins, wide) and _first_fit(order, sizes, left, bins, range(len(rooms))):
            return bins
    return _Search(sizes, rooms).found(sorted(range(len(sizes)), key=lambda index: -sizes[index]))


def _pinned(last: Sequence[int], sizes: Sequence[float], left: list[float], bins: list[Bin], wide: int) -> bool:
    """Puts what comes last into the last rooms that have space, and the entry doors on no later day than the rest."""
    entries, followers = ([index for index, one in enumerate(last) if one == rank] for rank in (1, 2))
    if not _first_fit(followers, sizes, left, bins, range(len(left) - 1, -1, -1)):
        return False
    until = next((room // wide for room, one in enumerate(bins) if one), len(left) // wide - 1)
    return _first_fit(entries, sizes, left, bins, range(until * wide + wide - 1, -1, -1))


def _first_fit(
    order: Iterable[int], sizes: Sequence[float], left: list[float], bins: list[Bin], rooms: Sequence[int]
) -> bool:
    """Puts each piece into the first room that has space for it; False where a piece fits nowhere."""
    for index in order:
        into = next((room for room in rooms if sizes[index] <= left[room] + _TINY), None)
        if into is None:
            return False
        bins[into].append(index)
        left[into] -= sizes[index]
    return True


class _Search:
    """Tries every way to put pieces into rooms, the longest first, until one fits or the trials run out."""

    def __init__(self, sizes: Sequence[float], rooms: Sequence[float]) -> None:
        self._sizes = sizes
        self._left = list(rooms)
        self._bins: list[Bin] = [[] for _ in rooms]
        self._trials = 0

    def found(self, order: Sequence[int]) -> list[Bin] | None:
        """The bins, or None where no way was found within the trials."""
        if len(order) > FEW or sum(self._sizes) > sum(self._left) + _TINY:
            return None
        return self._bins if self._place(order, 0) else None

    def _place(self, order: Sequence[int], at: int) -> bool:
        if at == len(order):
            return True
        tried: set[float] = set()
        for room, left in enumerate(self._left):
            size = self._sizes[order[at]]
            if size > left + _TINY or left in tried:  # rooms with as much left are alike
                continue
            tried.add(left)
            self._trials += 1
            if self._trials > SEARCHED:
                return False
            self._bins[room].append(order[at])
            self._left[room] = left - size
            if self._place(order, at + 1):
                return True
            self._bins[room].pop()
            self._left[room] = left
        return False


def _shared(day: Sequence[Bin], sizes: Sequence[float]) -> list[Bin]:
    """The pieces of a day, each to the technician who is free first, where that ends the day no later."""
    spread: list[Bin] = [[] for _ in day]
    busy = [0.0] * len(day)
    for index in sorted(one for each in day for one in each):
        free = busy.index(min(busy))
        spread[free].append(index)
        busy[free] += sizes[index]
    return spread if max(busy) <= max(sum(sizes[one] for one in each) for each in day) else list(day)


def _in_order(days: list[list[Bin]], pinned: int) -> list[list[Bin]]:
    """The days by their first piece of work; the closing day stays last and the first `pinned` days stay first."""
    sorted_days = [[sorted(one) for one in day] for day in days]
    *before, closing = sorted_days
    kept, free = before[:pinned], before[pinned:]
    return [*kept, *sorted(free, key=lambda day: min((index for one in day for index in one), default=0)), closing]


def _day(index: int, days: Sequence[Sequence[Bin]], pieces: Sequence[Piece], times: Times) -> Day:
    bins = days[index]
    ids = tuple(pieces[one].opening for one in sorted(one for each in bins for one in each))
    last = index == len(days) - 1
    busy = [total(pieces[one].takes for one in each) for each in bins]
    panel = times.panel if any(pieces[one].panel for each in bins for one in each) else NONE
    begin, close = NONE if index else times.begin, times.close if last else NONE
    spent = times.arrive + begin + _longest(busy) + panel + close + times.leave
    over = spent.usual - times.day
    free = Counter(when for each in bins for one in each if (when := pieces[one].free))
    work = listed(list(_what(len(ids), free, times, begins=times.takes_over and not index, last=last)), "unit")
    saves = 0 < over <= times.over
    words = message("day-over", work=work, over=short(over, "min")) if saves else message("day", work=work)
    return Day(index + 1, ids, spent.usual, words, spent.low, spent.high)


def _what(openings: int, free: Mapping[str, int], times: Times, *, begins: bool, last: bool) -> Iterator[Message]:
    """What a day consists of, and who works."""
    if begins:
        yield message("take-over")
    if openings:
        yield message("openings", count=openings)
    for when in sorted(free):
        yield message("of-them", count=free[when], when=when)
    first = not begins and not openings
    if last:
        yield message("proof.first" if first else "proof")
    yield message("technicians.first" if first and not last else "technicians", count=times.technicians)
    if times.people > times.technicians:
        yield message("one-more")


def _longest(busy: Sequence[Span]) -> Span:
    if not busy:
        return NONE
    return Span(max(one.low for one in busy), max(one.usual for one in busy), max(one.high for one in busy))


def _too_long(piece: Piece, times: Times, left: float) -> Problem:
    takes, day, room = (short(one, "min") for one in (piece.takes.usual, times.day, max(0.0, left)))
    return problem(message, piece.opening, "longer-than-a-day", takes=takes, day=day, room=room)
