"""Work shared out over all cores."""

from __future__ import annotations

import multiprocessing
import os
import threading
from collections.abc import Callable, Iterator, Sequence
from typing import TypeVar

T = TypeVar("T")
_tasks: Sequence[Callable[[], object]] = ()


def all_cores(tasks: Sequence[Callable[[], T]]) -> Iterator[T]:
    """What each task gives, in order.

    Tasks see everything as it is now and can change nothing here. Where the system cannot copy a running program, or
    threads run in it, they are done here in turn.
    """
    global _tasks
    workers = min(os.cpu_count() or 1, len(tasks))
    if workers < 2 or "fork" not in multiprocessing.get_all_start_methods() or threading.active_count() > 1:
        yield from (task() for task in tasks)
        return
    _tasks = tasks
    try:
        with multiprocessing.get_context("fork").Pool(workers) as pool:
            yield from pool.imap(_run, range(len(tasks)))
    finally:
        _tasks = ()


def _run(number: int) -> object:
    return _tasks[number]()
