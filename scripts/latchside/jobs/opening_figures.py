"""The figures of one opening with the device that was chosen for it: lines to read, values to expect, how to fix it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from datetime import date
from typing import TypeVar

from latchside.figures.catalogue import Figure
from latchside.figures.for_device.worked import Missing
from latchside.jobs.figures_for import cell, ladder, loop, magnet, radio
from latchside.jobs.figures_for.context import Context, device_of
from latchside.jobs.figures_for.fixing import fixing
from latchside.jobs.house import House
from latchside.jobs.plan import Expected, Fixing, Line
from latchside.jobs.survey import Opening, Survey
from latchside.library.model import Record

T = TypeVar("T")

_LINES = (magnet.magnet, loop.loop, radio.radio, cell.cell, ladder.ladder)
_EXPECTED = (magnet.expected, loop.expected, radio.expected, cell.expected)


def opening_figures(
    opening: Opening,
    device: Record,
    survey: Survey,
    figures: Mapping[str, Figure],
    on: date,
    house: House | None = None,
    contact: Record | None = None,
) -> tuple[tuple[Line, ...], tuple[Expected, ...], Fixing | None]:
    """The lines, the expected values and the fixing. What a device does not state is left out.

    `contact` is the class of the wired contact on the loop of a transmitter: gap and magnet are its own.
    """
    on_loop = device_of(contact) if contact else None
    context = Context(opening, device_of(device), survey, figures, on, house, on_loop)
    lines = tuple(line for work in _LINES for line in _tried(work, context))
    values = tuple(value for work in _EXPECTED for value in _tried(work, context))
    spacer = next((line for line in lines if line.figure == "spacer"), None)
    return lines, values, fixing(context, spacer)


def _tried(work: Callable[[Context], Iterable[T]], context: Context) -> tuple[T, ...]:
    """All that could be worked, up to the first rating that the device does not state."""
    found: list[T] = []
    with suppress(Missing):
        for one in work(context):
            found.append(one)
    return tuple(found)
