"""The leaning ladder, to scale: against a wall, and with its stiles above a landing."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from latchside.charts.axes import Axes, Scale
from latchside.charts.chart import Chart, Figures, example
from latchside.drawings.canvas import SMALL, Drawing, Sheet
from latchside.drawings.symbols import heading
from latchside.figures.rounding import say, short
from latchside.messages import messages

message = messages(__name__)

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
    sheet = Sheet("ladder-geometry", message("title"), _about(wall, landing, figures), 2 * _PANEL)
    heading(sheet, 18, message("wall"))
    axes = _ladder(sheet, 48, wall, _TALLEST)
    sheet.text(
        axes.x.at(0.35), axes.y.at(wall["height_m"]), message("high", height=short(wall["height_m"], "m")), size=SMALL
    )
    heading(sheet, _PANEL + 18, message("landing"))
    axes = _ladder(sheet, _PANEL + 48, landing, landing["height_m"])
    rise = _rise(figures)
    x, y = axes.x.at(0.3), axes.y.at(landing["height_m"])
    above = message("above-landing", rise=short(rise, "m"))
    sheet.dimension(x, axes.y.at(landing["height_m"] + rise), x, y, above)
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
        message("out"), message("height"), beside=_THICK,
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
    sheet.text(*middle, message("ladder", length=short(length, "m")), size=SMALL)
    foot, angle = message("foot", distance=short(out, "m")), message("angle", angle=short(answer["angle_deg"], "deg"))
    sheet.text(axes.x.at(out) + 22, axes.y.at(0) - 28, foot, size=SMALL)
    sheet.text(axes.x.at(out) + 22, axes.y.at(0) - 10, angle, size=SMALL)
    return axes


def _about(wall: Outputs, landing: Outputs, figures: Figures) -> str:
    against = message(
        "about-wall",
        length=say(wall["ladder_length_m"], "m"),
        out=say(wall["setback_m"], "m"),
        height=say(wall["height_m"], "m"),
        angle=say(wall["angle_deg"], "deg"),
    )
    onto = message(
        "about-landing",
        height=say(landing["height_m"], "m"),
        out=say(landing["setback_m"], "m"),
        length=say(landing["ladder_length_m"], "m"),
        rise=say(_rise(figures), "m"),
    )
    return f"{message('about')} {against} {onto}"


CHARTS = (Chart("ladder-geometry", FIGURE, (FIGURE,), ladder_geometry),)
