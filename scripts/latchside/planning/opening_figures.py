"""The figures of one opening with the device that was chosen for it: lines to read, values to expect, how to fix it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from datetime import date
from typing import Any, TypeVar

from latchside.figures.catalogue import Figure
from latchside.figures.for_device.worked import Missing
from latchside.library.model import Record
from latchside.planning.figures_for import cell, kept, ladder, loop, magnet, radio, trip
from latchside.planning.figures_for.context import Context, device_of
from latchside.planning.figures_for.fixing import fixing
from latchside.planning.house import House
from latchside.planning.plan import Expected, Fixing, Line
from latchside.surveys.survey import Opening, Survey

T = TypeVar("T")
Worker = Callable[[Context], Iterable[Any]]
"""Works lines or expected values of one subject."""

_BY_LABEL = (magnet.magnet, trip.trip)
_LINES = (*_BY_LABEL, loop.loop, radio.radio, cell.cell, ladder.ladder)
_EXPECTED_BY_LABEL = (magnet.expected,)
_EXPECTED = (*_EXPECTED_BY_LABEL, trip.expected, loop.expected, radio.expected, cell.expected)
"""What works the lines and the readings of an opening; by label are those that the magnet and reed of a class set."""


def opening_figures(
    opening: Opening,
    device: Record,
    survey: Survey,
    figures: Mapping[str, Figure],
    on: date,
    house: House | None = None,
    contact: Record | None = None,
    tried: Callable[[Worker, Context], tuple[Any, ...]] | None = None,
) -> tuple[tuple[Line, ...], tuple[Expected, ...], Fixing | None]:
    """The lines, the expected values and the fixing. What a device does not state is left out.

    `contact` is the class of the wired contact on the loop of a transmitter: gap and magnet are its own. A contact
    that stays is judged by its own label, which nobody has read yet, and never by the figures of another class.
    """
    tried = tried or worked
    on_loop = device_of(contact) if contact else None
    context = Context(opening, device_of(device), survey, figures, on, house, on_loop)
    stays = kept.stays(context)
    by_label = stays and not kept.second(context)
    lines = tuple(line for work in _LINES if not (by_label and work in _BY_LABEL) for line in tried(work, context))
    values = tuple(
        value
        for work in _EXPECTED
        for value in tried(work, context)
        if not (by_label and work in _EXPECTED_BY_LABEL) or value.measure in kept.OF_OPENING
    )
    if stays:
        lines = (*kept.kept(context), *lines)
    spacer = next((line for line in lines if line.figure == "spacer"), None)
    return lines, values, fixing(context, spacer)


def worked(work: Callable[[Context], Iterable[T]], context: Context) -> tuple[T, ...]:
    """All that could be worked, up to the first rating that the device does not state."""
    found: list[T] = []
    with suppress(Missing):
        for one in work(context):
            found.append(one)
    return tuple(found)
