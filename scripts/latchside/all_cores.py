"""Work shared out over all cores."""

from __future__ import annotations

import multiprocessing
import os
import threading
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import TypeVar

T = TypeVar("T")
Item = TypeVar("Item")
PARTS = 16
"""Into how many tasks a long list is cut: a few for each core, so that all end about together."""
FEW = 100
"""A list up to this long is done here: to start other processes would take longer."""
CORES = os.cpu_count() or 1
"""At most how many processes share the work."""
_tasks: Sequence[Callable[[], object]] = ()


def all_cores(tasks: Sequence[Callable[[], T]]) -> Iterator[T]:
    """What each task gives, in order.

    Tasks see everything as it is now and can change nothing here. Where the system cannot copy a running program, or
    threads run in it, they are done here in turn.
    """
    global _tasks
    workers = min(CORES, len(tasks))
    if workers < 2 or "fork" not in multiprocessing.get_all_start_methods() or threading.active_count() > 1:
        yield from (task() for task in tasks)
        return
    _tasks = tasks
    try:
        with multiprocessing.get_context("fork").Pool(workers) as pool:
            yield from pool.imap(_run, range(len(tasks)))
    finally:
        _tasks = ()


def each(items: Sequence[Item], do: Callable[[Item], T]) -> list[T]:
    """What is done gives for each item, in order, with the items shared out over all cores."""
    if len(items) <= FEW:
        return _all(items, do)
    size = -(-len(items) // PARTS)
    parts = [items[start : start + size] for start in range(0, len(items), size)]
    return [one for part in all_cores([partial(_all, part, do) for part in parts]) for one in part]


def _all(items: Sequence[Item], do: Callable[[Item], T]) -> list[T]:
    return [do(item) for item in items]


def _run(number: int) -> object:
    return _tasks[number]()
