"""Charts of loops and resistors: the readings of each state as bands, and resistors with their bands by name."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from latchside.charts.axes import Axes, Scale
from latchside.charts.chart import Chart, Figures, example
from latchside.drawings.canvas import FRAME_FILL, PAPER, SMALL, Drawing, Sheet
from latchside.drawings.symbols import heading
from latchside.figures.rounding import between, say
from latchside.figures.units import figure
from latchside.messages import listed, messages

message = messages(__name__)

STATES = ("short", "shut", "open", "cut", "tamper")
LAYOUTS = ("series", "double")
_ROW, _PANEL = 30, 252
_BANDS = (116, 172, 228, 304)
"""Where the bands stand on a resistor: the last one apart from the others."""
RESISTORS = (1000, 2200, 3300, 4700, 5600, 6800, 10000)
"""Values in ohm that end-of-line resistors often have."""
COLOURS: Mapping[str, str] = {
    "black": "#000000", "brown": "#7a4a21", "red": "#d11f1f", "orange": "#ef7d00", "yellow": "#f7d917",
    "green": "#2a8a3a", "blue": "#2456b8", "violet": "#7d3fa0", "grey": "#8f8f8f", "white": "#fafafa",
    "gold": "#c9a227", "silver": "#c4c8cc",
}  # fmt: skip


def loop_bands(figures: Figures) -> Drawing:
    """The voltage that each state of a loop may read, in two layouts."""
    answers = {layout: _loop(figures, layout) for layout in LAYOUTS}
    sheet = Sheet("loop-bands", message("loop-title"), _loop_message(figures, answers), 2 * _PANEL)
    for index, layout in enumerate(LAYOUTS):
        heading(sheet, index * _PANEL + 20, message(f"layout-{layout}"))
        _bands(sheet, index * _PANEL + 32, answers[layout], _supply(figures))
    return sheet.finish()


def _loop(figures: Figures, layout: str) -> Mapping[str, Any]:
    return figures["loop-states"].answer(example(figures["loop-states"], layout=layout)).outputs


def _supply(figures: Figures) -> float:
    given = figures["loop-states"].answer(example(figures["loop-states"])).inputs
    return float(given["supply_v"])


def _bands(sheet: Sheet, top: float, answer: Mapping[str, Any], supply: float) -> None:
    """A row for each state with its band, its typical reading and its lowest and highest in figures."""
    bottom = top + _ROW * len(STATES) + 6
    axes = Axes(sheet, Scale(0, supply, 84, 336), Scale(0, 1, bottom, top))
    ticks = {supply * share / 5: figure(supply * share / 5) for share in range(6)}
    axes.frame(ticks, {}, message("reading"), "")
    for row, state in enumerate(STATES):
        band, middle = answer["states"][state], top + _ROW * row + 18
        sheet.text(74, middle + 4.5, message(f"state-{state}"), size=SMALL, anchor="end")
        low, high = (axes.x.at(band[key]) for key in ("low_v", "high_v"))
        left, right = min(low, (low + high) / 2 - 3), max(high, (low + high) / 2 + 3)
        sheet.rect(left, middle - 9, right - left, 18, fill="leaf", line=2)
        sheet.line(axes.x.at(band["typical_v"]), middle - 9, axes.x.at(band["typical_v"]), middle + 9, line=2)
        beside = right + 6 if right < 230 else left - 6
        sheet.text(beside, middle + 4.5, _range(band), size=SMALL, anchor="start" if right < 230 else "end")
    for row, group in enumerate(answer["same_reading"]):
        sheet.text(8, bottom + 56 + 16 * row, _alike(group), size=SMALL, bold=True)


def _range(band: Mapping[str, float]) -> str:
    return between(band["low_v"], band["high_v"], "V")


def _alike(group: list[str]) -> str:
    states = [message(f"state-{group[0]}.first"), *(message(f"state-{state}") for state in group[1:])]
    return message("alike", states=listed(states))


def _loop_message(figures: Figures, answers: Mapping[str, Mapping[str, Any]]) -> str:
    given = figures["loop-states"].answer(example(figures["loop-states"])).inputs
    sentences: list[str] = [
        message(
            "circuit",
            pull_up=say(given["pull_up_ohm"], "ohm"),
            supply=say(given["supply_v"], "V"),
            end=say(given["end_ohm"], "ohm"),
            tolerance=say(given["tolerance_percent"], "%"),
        )
    ]
    for layout, answer in answers.items():
        shut, opened = (_range(answer["states"][state]) for state in ("shut", "open"))
        sentences += [
            message("reads", layout=message(f"layout-{layout}"), shut=shut, open=opened),
            *map(_alike, answer["same_reading"]),
            message("gap", gap=say(answer["smallest_gap_v"], "V")),
        ]
    return " ".join(sentences)


def resistor_bands(figures: Figures) -> Drawing:
    """Resistors that are often met at the end of a line, with the names of their bands."""
    resistors = [(ohm, figures["resistor"].answer(example(figures["resistor"], ohm=ohm)).outputs) for ohm in RESISTORS]
    read = [f"{say(answer['nearest_ohm'], 'ohm')}: {', '.join(answer['bands'])}" for _, answer in resistors]
    about = message("bands", read=". ".join(read))
    sheet = Sheet("resistor-bands", message("bands-title"), about, 48 + 64 * len(resistors))
    for x, band in zip(_BANDS, ("first", "second", "power", "tolerance"), strict=True):
        sheet.text(x, 22, message(f"band-{band}"), size=SMALL, anchor="middle")
    for row, (_, answer) in enumerate(resistors):
        _resistor(sheet, 40 + 64 * row, say(answer["nearest_ohm"], "ohm"), answer["bands"])
    return sheet.finish()


def _resistor(sheet: Sheet, y: float, value: str, bands: list[str]) -> None:
    sheet.text(8, y + 19, value, bold=True)
    sheet.line(76, y + 14, 354, y + 14, line=2)
    sheet.rect(90, y, 250, 28, round_=9, fill=FRAME_FILL, line=2)
    for x, band in zip(_BANDS, bands, strict=True):
        sheet.rect(x - 8, y, 16, 28, fill=COLOURS.get(band, PAPER), line=1.5)
        sheet.text(x, y + 43, band, size=SMALL, anchor="middle")


CHARTS = (
    Chart("loop-bands", "loop-states", ("loop-states",), loop_bands),
    Chart("resistor-bands", "resistor", ("resistor",), resistor_bands),
)
