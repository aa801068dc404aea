"""The test sheet: one row a contact, one column a reading; what is the same in a column stands in its head."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from latchside.library.alike import alike
from latchside.messages import messages
from latchside.packs.contacts import Spot, spots
from latchside.packs.paper import Paper
from latchside.packs.sheets import AT_PANEL
from latchside.packs.words import Reading, own_reading, proofs
from latchside.planning.plan import Plan

message = messages(__name__)
_RADIO = "radio-margin"
_ORDER = ("fit-gap", "play", "trip", "trip-tilted", "shows-lifted")
"""What is read at the door or window comes first; all else in the order of the plan."""


@dataclass(frozen=True)
class Column:
    """A reading of several contacts: its short name, and what it should be where that is the same for all of them."""

    measure: str
    label: str
    expected: str


@dataclass(frozen=True)
class Cell:
    """Room for a reading: what it should be where its column does not say, and its unit."""

    column: Column
    expected: str
    unit: str


@dataclass(frozen=True)
class Table:
    """Contacts on which the same things are read; a cell that is None has nothing to read.

    `at_panel` is what is set at the panel, the same for all of them, and read there once.
    """

    link: str
    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Spot, tuple[Cell | None, ...]], ...]
    at_panel: tuple[Reading, ...]


def tables(plan: Plan, page: Paper, *, imperial: bool) -> Iterator[Table]:
    """The contacts on cable, then those on radio."""
    read = [(spot, {one.measure: one for one in _readings(spot, page, imperial=imperial)}) for spot in spots(plan)]
    groups = alike(read, lambda one: "radio" if _RADIO in one[1] else "wired")
    for link in sorted(groups, reverse=True):
        rows = groups[link]
        once = tuple(_once([readings for _, readings in rows]))
        told = {one.measure for one in once}
        found = dict.fromkeys(measure for _, readings in rows for measure in readings if measure not in told)
        measures = sorted(found, key=lambda one: _ORDER.index(one) if one in _ORDER else len(_ORDER))
        columns = tuple(_column(one, [readings[one] for _, readings in rows if one in readings]) for one in measures)
        made = ((spot, tuple(_cell(column, spot, readings) for column in columns)) for spot, readings in rows)
        yield Table(link, message(link), columns, tuple(made), once)


def _once(rows: Sequence[Mapping[str, Reading]]) -> Iterator[Reading]:
    """What is set at the panel, where it is the same for every contact."""
    for measure, reading in rows[0].items():
        if measure in AT_PANEL and all(measure in row and row[measure].expected == reading.expected for row in rows):
            yield reading


def _readings(spot: Spot, page: Paper, *, imperial: bool) -> Iterator[Reading]:
    yield from (own_reading(value, imperial=imperial) for value in spot.plan.expected)
    yield from proofs(page, spot.plan, spot.shown, imperial=imperial)


def _column(measure: str, readings: Iterable[Reading]) -> Column:
    found = list(readings)
    expected = {one.expected for one in found}
    return Column(
        measure,
        found[0].label,
        message("as-named") if measure == "name" else expected.pop() if len(expected) == 1 else "",
    )


def _cell(column: Column, spot: Spot, readings: dict[str, Reading]) -> Cell | None:
    reading = readings.get(column.measure)
    if reading is None:
        return None
    told = reading.expected == spot.name if column.measure == "name" else bool(column.expected)
    return Cell(column, "" if told else reading.expected, reading.unit)
