"""The figures that matter to a device, worked with its own ratings.

A rating that the record does not state leaves its figure out, and so does one outside the range of the figure.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from latchside.figures.catalogue import InputError
from latchside.figures.for_device import loop, magnet, power, radio
from latchside.figures.for_device.worked import Figures, Missing, Note, Ratings, Worked

__all__ = ["Note", "Worked", "for_device"]

Worker = Callable[[Ratings, Figures], Iterable[Worked]]
WORKERS: tuple[Worker, ...] = (magnet.reach, magnet.spacer, loop.readings, power.cell, radio.supervision, radio.margin)
"""In the order in which they stand on a page."""


def for_device(values: Mapping[str, Mapping[str, Any]], figures: Figures) -> tuple[Worked, ...]:
    """The figures for a device with the ratings `values`, as its record states them."""
    ratings = Ratings(values)
    return tuple(worked for worker in WORKERS for worked in _tried(worker, ratings, figures))


def _tried(worker: Worker, ratings: Ratings, figures: Figures) -> tuple[Worked, ...]:
    try:
        return tuple(worker(ratings, figures))
    except (Missing, InputError):
        return ()
