"""Many pieces of work over all cores, in order, with no more of them in hand than the cores can use."""

from __future__ import annotations

import os
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import Future, ProcessPoolExecutor
from multiprocessing import get_context
from typing import TypeVar

Work = TypeVar("Work")
Done = TypeVar("Done")

FEW = 6
"""Up to so many are done here: starting other processes would take longer."""
_AHEAD = 4


def each(pieces: list[Work], do: Callable[[Work], Done], start: Callable[[], None]) -> Iterator[Done]:
    """What comes of each piece, in their order. `start` makes a process ready, and `do` does one piece in it."""
    if len(pieces) <= FEW:
        start()
        yield from map(do, pieces)
        return
    workers = min(os.cpu_count() or 1, len(pieces))
    with ProcessPoolExecutor(workers, mp_context=get_context("spawn"), initializer=start) as pool:
        yield from _in_order(pool, pieces, do, workers * _AHEAD)


def _in_order(
    pool: ProcessPoolExecutor, pieces: Iterable[Work], do: Callable[[Work], Done], most: int
) -> Iterator[Done]:
    waiting: deque[Future[Done]] = deque()
    for piece in pieces:
        waiting.append(pool.submit(do, piece))
        if len(waiting) >= most:
            yield waiting.popleft().result()
    while waiting:
        yield waiting.popleft().result()
