"""The test sheet: one row a contact, one column a reading; what is the same in a column stands in its head.

What is read at one place stands in one table, so that none is wider than the paper.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from latchside.messages import messages
from latchside.packs.contacts import Spot, spots
from latchside.packs.paper import Paper
from latchside.packs.sheets import AT_PANEL
from latchside.packs.words import Reading, own_reading, proofs
from latchside.planning.plan import Plan

message = messages(__name__)
DOORS = "doors"
"""The table in which every contact has its row."""
_RADIO = "radio-margin"
_OF_RADIO = frozenset({_RADIO, "cell-voltage", "cover"})
_OF_LOOP = ("loop-", "input-", "cable-", "landed")
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
    """What is read at each door and window, then at each loop, then of the radio: each fits across a sheet of paper."""
    read = [(spot, {one.measure: one for one in _readings(spot, page, imperial=imperial)}) for spot in spots(plan)]
    by_radio = [readings for _, readings in read if _RADIO in readings]
    once = tuple(_once(by_radio)) if by_radio else ()
    told = {one.measure for one in once}
    for link in (DOORS, "loops", "radio"):
        rows = [(spot, {id_: one for id_, one in own.items() if _where(id_) == link}) for spot, own in read]
        rows = [(spot, own) for spot, own in rows if own.keys() - told]
        found = dict.fromkeys(measure for _, readings in rows for measure in readings if measure not in told)
        measures = sorted(found, key=lambda one: _ORDER.index(one) if one in _ORDER else len(_ORDER))
        columns = tuple(_column(one, [readings[one] for _, readings in rows if one in readings]) for one in measures)
        made = ((spot, tuple(_cell(column, spot, readings) for column in columns)) for spot, readings in rows)
        if rows:
            yield Table(link, message(link), columns, tuple(made), once if link == "radio" else ())


def _where(measure: str) -> str:
    """The table that a reading stands in."""
    if measure in AT_PANEL or measure in _OF_RADIO:
        return "radio"
    return "loops" if measure.startswith(_OF_LOOP) else DOORS


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
