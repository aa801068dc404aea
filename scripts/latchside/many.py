"""Many pieces of work shared out over workers, in order, with no more of them in hand than the workers can use.

Workers are this machine's cores, or anything else that opens an executor as `concurrent.futures` has them.
"""

from __future__ import annotations

import os
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import BrokenExecutor, Executor, Future, ProcessPoolExecutor
from contextlib import AbstractContextManager, ExitStack
from dataclasses import dataclass
from multiprocessing import get_context
from typing import Protocol, TypeVar

Work = TypeVar("Work")
Done = TypeVar("Done")

FEW = 6
"""Up to so many are done here: starting other processes would take longer."""
_AHEAD = 4
"""So many pieces are in hand for each worker, so that none waits for the slowest of the others."""


class Workers(Protocol):
    """Whoever does the work."""

    @property
    def lost(self) -> tuple[type[Exception], ...]:
        """What a piece raises whose worker was lost; whatever else it raises, it raises itself."""

    @property
    def count(self) -> int:
        """How many pieces are worked at a time."""

    def executor(self, count: int) -> AbstractContextManager[Executor]:
        """An executor over so many workers. A new one is opened after a worker was lost."""


@dataclass(frozen=True)
class Cores:
    """The cores of this machine, a process each. `start` makes a process ready, such as by reading the records."""

    start: Callable[[], None]
    lost: tuple[type[Exception], ...] = (BrokenExecutor,)
    count: int = os.cpu_count() or 1

    def executor(self, count: int) -> ProcessPoolExecutor:
        """New processes, which share nothing with this one."""
        return ProcessPoolExecutor(count, mp_context=get_context("spawn"), initializer=self.start)


def each(
    pieces: Sequence[Work], do: Callable[[Work], Done], workers: Workers, lost: Callable[[Work], Done]
) -> Iterator[Done]:
    """What comes of each piece, in their order.

    A piece whose worker was lost (killed, or out of memory) is done again once, by itself, so that it costs no other;
    where that worker is lost too, `lost` says what came of the piece.
    """
    if len(pieces) <= FEW:
        yield from map(do, pieces)
        return
    rest = deque(pieces)
    while rest:
        yield from _until_lost(rest, do, workers, lost)


def _until_lost(
    rest: deque[Work], do: Callable[[Work], Done], workers: Workers, lost: Callable[[Work], Done]
) -> Iterator[Done]:
    """Work off pieces until none is left or a worker was lost; those that were in hand then are done one by one."""
    count = min(workers.count, len(rest))
    in_hand: deque[tuple[Work, Future[Done]]] = deque()
    broken = False
    with workers.executor(count) as executor, _Alone(workers) as alone:
        while in_hand or (rest and not broken):
            while rest and not broken and len(in_hand) < count * _AHEAD:
                try:
                    in_hand.append((rest[0], executor.submit(do, rest[0])))
                    rest.popleft()
                except workers.lost:
                    broken = True
            if in_hand:
                piece, future = in_hand.popleft()
                try:
                    done = future.result()
                except workers.lost:
                    broken = True
                    done = alone.again(piece, do, lost)
                yield done


class _Alone:
    """One worker that does again, one after the other, what was lost with others; a new one where it is lost too."""

    def __init__(self, workers: Workers) -> None:
        self._workers = workers
        self._opened = ExitStack()
        self._executor: Executor | None = None

    def __enter__(self) -> _Alone:
        return self

    def __exit__(self, *error: object) -> None:
        self._opened.close()

    def again(self, piece: Work, do: Callable[[Work], Done], lost: Callable[[Work], Done]) -> Done:
        """What comes of a piece; where the worker is lost, what `lost` says."""
        if self._executor is None:
            self._executor = self._opened.enter_context(self._workers.executor(1))
        try:
            return self._executor.submit(do, piece).result()
        except self._workers.lost:
            self._opened.close()
            self._executor = None
            return lost(piece)
