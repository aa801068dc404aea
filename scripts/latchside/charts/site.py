"""The leaning ladder, to scale: against a wall, and with its stiles above a landing."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from latchside.charts.axes import Axes, Scale
from latchside.charts.chart import Chart, Figures, example
from latchside.drawings.canvas import SMALL, Drawing, Sheet
from latchside.drawings.symbols import heading
from latchside.figures.rounding import say, short

FIGURE = "ladder"
LANDING_M = 2.5
"""Height of the landing in the second picture."""
_PER_M, _TALLEST, _WIDEST, _PANEL = 52, 4.4, 5, 334
_FACE, _THICK, _RAIL, _RUNG = 84, 40, 0.11, 0.28
"""Where the face of the wall stands on the sheet and how thick it is drawn; rails and rungs in m."""

Outputs = Mapping[str, Any]


def ladder_geometry(figures: Figures) -> Drawing:
    """Two ladders, with their lengths, heights and set-back."""
    wall, landing = against_wall(figures), onto_landing(figures)
    sheet = Sheet("ladder-geometry", "Set-back of a leaning ladder", _message(wall, landing, figures), 2 * _PANEL)
    heading(sheet, 18, "Against a wall")
    axes = _ladder(sheet, 48, wall, _TALLEST)
    sheet.text(axes.x.at(0.35), axes.y.at(wall["height_m"]), f"{short(wall['height_m'], 'm')} high", size=SMALL)
    heading(sheet, _PANEL + 18, "Onto a landing")
    axes = _ladder(sheet, _PANEL + 48, landing, landing["height_m"])
    rise = _rise(figures)
    x, y = axes.x.at(0.3), axes.y.at(landing["height_m"])
    sheet.dimension(x, axes.y.at(landing["height_m"] + rise), x, y, f"{short(rise, 'm')} above the landing")
    sheet.line(axes.x.at(0), y, x + 8, y, line=1)
    return sheet.finish()


def against_wall(figures: Figures) -> Outputs:
    """The ladder of the figure's own example."""
    return figures[FIGURE].answer(example(figures[FIGURE])).outputs


def onto_landing(figures: Figures) -> Outputs:
    """A ladder onto a landing."""
    return figures[FIGURE].answer({"support_height_m": LANDING_M, "landing": True}).outputs


def _rise(figures: Figures) -> float:
    return float(figures[FIGURE].data["values"]["above-landing"]["value"])


def _ladder(sheet: Sheet, top: float, answer: Outputs, wall_m: float) -> Axes:
    """The wall with its face on the axis, and the ladder with its foot at its set-back."""
    ground = top + _TALLEST * _PER_M
    axes = Axes(sheet, Scale(0, _WIDEST, _FACE, _FACE + _WIDEST * _PER_M), Scale(0, _TALLEST, ground, top))
    axes.frame(
        {float(v): f"{v}" for v in range(_WIDEST + 1)}, {float(v): f"{v}" for v in range(5)},
        "out from the wall, m", "height, m", beside=_THICK,
    )  # fmt: skip
    sheet.rect(_FACE - _THICK, axes.y.at(wall_m), _THICK, ground - axes.y.at(wall_m), fill="leaf", line=2)
    out, height, length = answer["setback_m"], answer["height_m"], answer["ladder_length_m"]
    leaning = (out * out + height * height) ** 0.5
    across, up = -out / leaning, height / leaning
    for rail in (0.0, _RAIL):
        axes.curve([(out + rail, 0), (out + rail + across * length, up * length)], line=2.5)
    for rung in range(1, int(length / _RUNG)):
        x, y = out + across * rung * _RUNG, up * rung * _RUNG
        axes.curve([(x, y), (x + _RAIL, y)], line=1.5)
    middle = axes.x.at(out / 2) + 22, axes.y.at(height / 2)
    sheet.text(*middle, f"ladder {short(length, 'm')}", size=SMALL)
    sheet.text(axes.x.at(out) + 22, axes.y.at(0) - 28, f"foot {short(out, 'm')} out", size=SMALL)
    sheet.text(axes.x.at(out) + 22, axes.y.at(0) - 10, f"{short(answer['angle_deg'], 'deg')} to the ground", size=SMALL)
    return axes


def _message(wall: Outputs, landing: Outputs, figures: Figures) -> str:
    return (
        "The foot of a ladder stands out a quarter of its working length. Against a wall, a ladder of "
        f"{say(wall['ladder_length_m'], 'm')} stands {say(wall['setback_m'], 'm')} out, reaches "
        f"{say(wall['height_m'], 'm')} and leans at {say(wall['angle_deg'], 'deg')} to the ground. Onto a landing "
        f"{say(landing['height_m'], 'm')} high it stands {say(landing['setback_m'], 'm')} out and is at least "
        f"{say(landing['ladder_length_m'], 'm')} long, because its stiles rise {say(_rise(figures), 'm')} above the "
        "landing as a handhold."
    )


CHARTS = (Chart("ladder-geometry", FIGURE, (FIGURE,), ladder_geometry),)
