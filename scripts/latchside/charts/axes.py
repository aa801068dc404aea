"""Axes on a sheet: two scales with ticks, names and units, and curves and areas placed on them.

Curves are told apart by their dashes and by the words of the key, never by colour.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import log10

from latchside.drawings.canvas import FADED, INK, SMALL, Sheet, number
from latchside.drawings.line import simplified

Points = Iterable[tuple[float, float]]
DASHES: tuple[str | None, ...] = (None, "8 4", "2 3")
"""One line style for each curve of a chart, the plain one first."""


@dataclass(frozen=True)
class Scale:
    """A range of values, `low` to `high`, laid on the sheet from `start` to `end`; evenly, or by powers of ten."""

    low: float
    high: float
    start: float
    end: float
    log: bool = False

    def at(self, value: float) -> float:
        """Where a value stands on the sheet."""
        low, high, value = (
            (log10(v) for v in (self.low, self.high, value)) if self.log else (self.low, self.high, value)
        )
        return self.start + (self.end - self.start) * (value - low) / (high - low)

    def steps(self, count: int) -> list[float]:
        """So many values from end to end, evenly spaced on the sheet, for a curve."""
        if self.log:
            return [self.low * (self.high / self.low) ** (i / (count - 1)) for i in range(count)]
        return [self.low + (self.high - self.low) * i / (count - 1) for i in range(count)]


@dataclass(frozen=True)
class Axes:
    """Two scales on a sheet, x to the right and y upwards."""

    sheet: Sheet
    x: Scale
    y: Scale

    def frame(
        self, x_ticks: Mapping[float, str], y_ticks: Mapping[float, str], x_name: str, y_name: str,
        below: float = 0, beside: float = 0,
    ) -> None:  # fmt: skip
        """The axes with a light grid, their ticks and names; `below` and `beside` keep room between axes and ticks."""
        for value, words in y_ticks.items():
            y = self.y.at(value)
            self._grid(self.x.start, y, self.x.end, y)
            self.sheet.text(self.x.start - beside - 5, y + 4.5, words, size=SMALL, anchor="end")
        for value, words in x_ticks.items():
            x = self.x.at(value)
            self._grid(x, self.y.end, x, self.y.start)
            self.sheet.line(x, self.y.start + below, x, self.y.start + below + 4)
            self.sheet.text(x, self.y.start + below + 18, words, size=SMALL, anchor="middle")
        self.sheet.line(self.x.start, self.y.start, self.x.end, self.y.start)
        self.sheet.line(self.x.start, self.y.start, self.x.start, self.y.end)
        middle = (self.x.start + self.x.end) / 2
        self.sheet.text(middle, self.y.start + below + 35, x_name, size=SMALL, anchor="middle")
        self.sheet.text(8, self.y.end - 12, y_name, size=SMALL)

    def _grid(self, x1: float, y1: float, x2: float, y2: float) -> None:
        self.sheet.line(x1, y1, x2, y2, line=0.5, dash="1 3", colour=FADED)

    def curve(self, points: Points, *, dash: str | None = None, line: float = 2) -> None:
        """A line through points given in values."""
        self.sheet.path(self._way(points), dash=dash, line=line)

    def area(self, loops: Sequence[Points], *, fill: str = "none", dash: str | None = None, line: float = 1.5) -> None:
        """Closed shapes through points given in values."""
        for loop in loops:
            self.sheet.path(self._way(loop) + " Z", fill=fill, dash=dash, line=line)

    def _way(self, points: Points) -> str:
        line = simplified([(self.x.at(x), self.y.at(y)) for x, y in points])
        return "M" + " L".join(f"{number(round(x, 1))} {number(round(y, 1))}" for x, y in line)

    def mark(self, x: float, y: float, words: str, *, right: bool = True) -> None:
        """A dot at a point with words beside it."""
        self.sheet.circle(self.x.at(x), self.y.at(y), 3, fill=INK, line=0)
        aside = 6 if right else -6
        self.sheet.text(self.x.at(x) + aside, self.y.at(y) - 5, words, size=SMALL, anchor="start" if right else "end")


def key(sheet: Sheet, x: float, y: float, entries: Sequence[tuple[str | None, str]]) -> None:
    """The key of a chart: a piece of each line with its words, one under another."""
    for index, (dash, words) in enumerate(entries):
        middle = y + index * 18
        sheet.line(x, middle, x + 34, middle, line=2, dash=dash)
        sheet.text(x + 40, middle + 4.5, words, size=SMALL)
