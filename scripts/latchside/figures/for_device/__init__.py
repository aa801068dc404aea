"""The figures that matter to a device, worked with its own ratings.

A rating that the record does not state leaves its figure out, and so does one outside the range of the figure.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import partial
from typing import Any

from latchside.figures.catalogue import InputError
from latchside.figures.for_device import loop, magnet, power, radio
from latchside.figures.for_device.worked import Figures, Missing, Note, Ratings, Worked
from latchside.library.traits import Traits

__all__ = ["Note", "Worked", "for_device"]

Worker = Callable[[Ratings, Figures], Iterable[Worked]]


def for_device(values: Mapping[str, Mapping[str, Any]], traits: Traits, figures: Figures) -> tuple[Worked, ...]:
    """The figures for a device of these traits with the ratings `values`, as its record states them."""
    ratings = Ratings(values)
    return tuple(worked for worker in _workers(traits) for worked in _tried(worker, ratings, figures))


def _workers(traits: Traits) -> Iterator[Worker]:
    """In the order in which they stand on a page."""
    if traits.magnetic:
        yield partial(magnet.reach, traits=traits)
        if traits.has("spacer"):
            yield magnet.spacer
    if traits.has_terminals:
        yield partial(loop.readings, traits=traits)
    if traits.has("cell"):
        yield power.cell
    if not traits.wired:
        yield from (radio.supervision, radio.margin)


def _tried(worker: Worker, ratings: Ratings, figures: Figures) -> tuple[Worked, ...]:
    try:
        return tuple(worker(ratings, figures))
    except (Missing, InputError):
        return ()
