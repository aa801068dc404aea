"""The life of a cell against the time between check-ins."""

from __future__ import annotations

from typing import Any

from latchside.charts.axes import DASHES, Axes, Scale, key
from latchside.charts.chart import Chart, Figures, example
from latchside.drawings.canvas import SMALL, Drawing, Sheet
from latchside.figures.rounding import say, short
from latchside.messages import messages

message = messages(__name__)

CELLS = (("cylinder", 1500.0), ("small", 800.0), ("coin", 225.0))
"""Lithium cells with their capacity in mAh, light load, as handbooks of cells state it."""
SHORTEST, LONGEST = 1.0, 1440.0
"""Times between check-ins in minutes: one minute and a day."""
TICKS = {1.0: "1-min", 10.0: "10-min", 60.0: "1-h", 360.0: "6-h", 1440.0: "1-day"}
"""Marks of the axis in minutes, each with its message."""
_MOST = 14.0


def cell_life_by_check_in(figures: Figures) -> Drawing:
    """Three cells in the same radio contact."""
    sheet = Sheet("cell-life-by-check-in", message("title"), _about(figures), 340)
    axes = Axes(sheet, Scale(SHORTEST, LONGEST, 44, 334, log=True), Scale(0, _MOST, 224, 30))
    ticks = {minutes: message(f"tick-{tick}") for minutes, tick in TICKS.items()}
    axes.frame(ticks, {float(v): f"{v}" for v in range(0, 15, 2)}, message("check-ins"), message("life"))
    for (_, capacity), dash in zip(CELLS, DASHES, strict=True):
        axes.curve(((at, life(figures, capacity, at)) for at in axes.x.steps(60)), dash=dash)
    longest = _planned(figures)
    sheet.line(axes.x.start, axes.y.at(longest), axes.x.end, axes.y.at(longest), line=1)
    sheet.text(axes.x.end - 4, axes.y.at(longest) + 15, message("planned"), size=SMALL, anchor="end")
    entries = [
        (dash, message(f"key-{cell}", capacity=short(size, "mAh", 4)))
        for (cell, size), dash in zip(CELLS, DASHES, strict=True)
    ]
    key(sheet, 44, 282, entries)
    return sheet.finish()


def life(figures: Figures, capacity_mah: float, check_in_min: float) -> float:
    """Years of a cell at the most, in the contact of the figure's own example."""
    current = figures["cell-current"].answer(example(figures["cell-current"], check_in_min=check_in_min))
    inputs: dict[str, Any] = {"capacity_mah": capacity_mah, "average_ua": current.outputs["average_ua"]}
    return float(figures["cell-life"].answer(inputs).outputs["years"])


def _planned(figures: Figures) -> float:
    return float(figures["cell-life"].data["values"]["longest-planned"]["value"])


def _about(figures: Figures) -> str:
    given = figures["cell-current"].answer(example(figures["cell-current"])).inputs
    lives = [
        message(
            f"lasts-{cell}",
            capacity=say(size, "mAh", 4),
            minute=say(life(figures, size, SHORTEST), "year"),
            hour=say(life(figures, size, 60), "year"),
            day=say(life(figures, size, LONGEST), "year"),
        )
        for cell, size in CELLS
    ]
    return message(
        "about",
        standby=say(given["standby_ua"], "uA"),
        uses=say(given["events_per_day"], "count"),
        lives="; ".join(lives),
        planned=say(_planned(figures), "year"),
    )


CHARTS = (Chart("cell-life-by-check-in", "cell-life", ("cell-life", "cell-current"), cell_life_by_check_in),)
