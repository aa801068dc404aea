"""The figures of a device page: worked with the device's own ratings, each with a way to its figure."""

from __future__ import annotations

from urllib.parse import urlencode

from latchside.figures.for_device import Worked, for_device
from latchside.library import Library, Record
from latchside.library.traits import traits
from latchside.pages.calculators import figure_of, is_calculator


def device_figures(library: Library, device: Record) -> tuple[Worked, ...]:
    """Every figure that can be worked out with the ratings the device states."""
    figures = {record.id: figure_of(record) for record in library.of("formula")}
    return for_device(device["values"], traits(device), figures)


def carried(library: Library, worked: Worked) -> str:
    """What follows the address of the figure's page: every input for its calculator, where it has one."""
    record = library.find("formula", worked.figure)
    if record is None or not is_calculator(record):
        return ""
    inputs = figure_of(record).answer(worked.inputs).inputs
    known = {name: _typed(value) for name, value in inputs.items() if value is not None}
    return f"?{urlencode(known)}#calculator"


def _typed(value: object) -> str:
    """A value as the calculator reads it: a point for decimals, a list separated by semicolons."""
    if isinstance(value, list | tuple):
        return ";".join(_typed(one) for one in value)
    if isinstance(value, bool) or not isinstance(value, int | float):
        return str(value).lower()
    return f"{value:.6g}"
