"""Maps of where a magnet closes a reed: side by side and end on, in air and over steel, side lobes included.

The maps are drawn from the field of the magnet on a grid; the distances in their messages come from the figure.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from latchside.charts.axes import Axes, Scale
from latchside.charts.chart import Chart, Figures, example
from latchside.charts.contour import Spot, areas
from latchside.drawings.canvas import FRAME_FILL, INK, SMALL, Drawing, Sheet
from latchside.drawings.symbols import heading
from latchside.figures.rounding import say
from latchside.messages import messages

if TYPE_CHECKING:
    from latchside.figures.models.reed_gap import Magnet

message = messages(__name__)

FIGURE = "reed-gap"
STEEL_MM = 5.0
"""Height of both axes above the steel in the second map: as low as small parts lie."""
_STEP, _LEAST = 0.5, 0.01
_LEFT, _RIGHT = 48, 348


@dataclass(frozen=True)
class Plan:
    """How the maps are laid out, in mm: half their width, the gaps shown, the gap at which the message looks aside."""

    mount: str
    aside: float
    near: float
    far: float
    looked_at: float

    @property
    def scale(self) -> float:
        """Sheet units for each mm."""
        return (_RIGHT - _LEFT) / (2 * self.aside)

    @property
    def high(self) -> float:
        """Sheet units of one map with its heading, ticks and name."""
        return (self.far - self.near) * self.scale + (126 if self.mount == "parallel" else 102)


PARALLEL = Plan("parallel", 40, 0, 26, 8)
END_ON = Plan("end-on", 30, -10, 30, -5)


@dataclass(frozen=True)
class Map:
    """The areas of one map, in mm: where the reed closes, where it holds once closed, and the side lobes."""

    closes: list[list[Spot]]
    lobes: list[list[Spot]]
    holds: list[list[Spot]]


@dataclass(frozen=True)
class Aside:
    """Offsets in mm at one gap: closed up to `closed`, open from there, closed again from `lobe` to `end`."""

    closed: float
    lobe: float
    end: float


def parallel(figures: Figures) -> Drawing:
    """Magnet and reed side by side."""
    return _chart("reach-parallel", PARALLEL, figures)


def end_on(figures: Figures) -> Drawing:
    """Magnet and reed end to end."""
    return _chart("reach-end-on", END_ON, figures)


def _chart(id_: str, plan: Plan, figures: Figures) -> Drawing:
    sheet = Sheet(id_, message(f"title-{plan.mount}"), about(plan, figures), round(2 * plan.high))
    for index, steel in enumerate((None, STEEL_MM)):
        top = index * plan.high
        heading(sheet, top + 18, message("in-air") if steel is None else message("above-steel", height=f"{steel:g}"))
        _panel(sheet, plan, figures, top + 50, steel)
    return sheet.finish()


def _panel(sheet: Sheet, plan: Plan, figures: Figures, top: float, steel: float | None) -> None:
    y = Scale(plan.near, plan.far, top + (plan.far - plan.near) * plan.scale, top)
    axes = Axes(sheet, Scale(-plan.aside, plan.aside, _LEFT, _RIGHT), y)
    shape = closed_map(plan, figures, steel)
    axes.area(shape.closes, fill=FRAME_FILL, line=2)
    axes.area(shape.lobes, fill="steel")
    axes.area(shape.holds, dash="2 3", line=1)
    sides = {float(v): f"{abs(v)}" for v in range(-int(plan.aside), int(plan.aside) + 1, 10)}
    ups = {float(v): f"{v}".replace("-", "\u2212") for v in range(int(plan.near), int(plan.far) + 1, 10)}
    below = 26 if plan.mount == "parallel" else 0
    axes.frame(sides, ups, message("off-mark"), message("gap"), below)
    _reed(sheet, plan, axes)
    _magnet(sheet, plan, axes, figures)
    _names(sheet, plan, axes, shape)


def _names(sheet: Sheet, plan: Plan, axes: Axes, shape: Map) -> None:
    """Words on the areas; those of a side lobe lead to its middle."""
    sheet.text(axes.x.at(0), axes.y.at(4), message("closes"), size=SMALL, anchor="middle", bold=True)
    middle = [(max(v) + min(v)) / 2 for v in zip(*shape.lobes[0], strict=True)]
    x, y = axes.x.at(-abs(middle[0])), axes.y.at(middle[1])
    _lead(sheet, axes.y.at(18 if plan.mount == "parallel" else 5), message("side-lobe"), 62, x, y)
    sheet.text(_RIGHT - 2, axes.y.at(plan.far) + 15, message("dotted"), size=SMALL, anchor="end")
    sheet.text(_RIGHT - 2, axes.y.at(plan.far) + 31, message("once-closed"), size=SMALL, anchor="end")


def _lead(sheet: Sheet, y: float, words: str, wide: float, to_x: float, to_y: float) -> None:
    """Words at the left with a leader from their end to the thing they name."""
    sheet.text(_LEFT + 6, y, words, size=SMALL)
    sheet.line(_LEFT + 6 + wide, y - 3, to_x, to_y, line=1)
    sheet.circle(to_x, to_y, 2, fill=INK, line=0)


def _reed(sheet: Sheet, plan: Plan, axes: Axes) -> None:
    """The reed: its middle, or its near end, is where the map is counted from."""
    x, y = axes.x.at(0), axes.y.at(0)
    if plan.mount == "parallel":
        sheet.rect(x - 38, y + 6, 76, 14, round_=7)
        sheet.line(x - 48, y + 13, x + 4, y + 12, line=2)
        sheet.line(x + 48, y + 13, x - 4, y + 14, line=2)
        sheet.text(x - 54, y + 18, message("reed"), size=SMALL, anchor="end")
    else:
        sheet.rect(x - 8, y + 3, 16, axes.y.start - y - 6, round_=6)
        sheet.line(x, y + 1, x, axes.y.start, line=2)
        sheet.line(axes.x.start, y, axes.x.end, y, line=1)
        _lead(sheet, axes.y.start - 8, message("reed"), 32, x - 5, axes.y.start - 14)


def _magnet(sheet: Sheet, plan: Plan, axes: Axes, figures: Figures) -> None:
    """The magnet to scale at one place, with a dot at the middle of its face: the place that is mapped."""
    given = figures[FIGURE].answer(example(figures[FIGURE], mount=plan.mount)).inputs
    long, thick, gap = given["length_mm"], given["diameter_mm"], 12.0
    wide, high = (long, thick) if plan.mount == "parallel" else (thick, long)
    x, y = axes.x.at(-wide / 2), axes.y.at(min(gap + high, plan.far))
    sheet.rect(x, y, axes.x.at(wide / 2) - x, axes.y.at(gap) - y, line=1.5, dash="5 3", fill="none")
    sheet.circle(axes.x.at(0), axes.y.at(gap), 3, fill=INK, line=0)
    if plan.mount == "parallel":
        sheet.text(axes.x.at(wide / 2) + 8, axes.y.at(gap + 1.5), message("magnet"), size=SMALL)
    else:
        sheet.text(axes.x.at(-wide / 2) - 5, axes.y.at(plan.far - 2), message("magnet"), size=SMALL, anchor="end")


def closed_map(plan: Plan, figures: Figures, steel: float | None) -> Map:
    """The areas of one map, from the field on a grid of half a millimetre."""
    magnet, operate, release = _parts(plan, figures)
    half = _steps(0.0, plan.aside)
    ys = [gap if abs(gap) >= _LEAST else _LEAST for gap in _steps(plan.near, plan.far)]
    right = [[_field(plan, magnet, offset, gap, steel) for offset in half] for gap in ys]
    field = [[*row[:0:-1], *row] for row in right]
    against = [[-value for value in row] for row in field]
    xs = [*(-offset for offset in half[:0:-1]), *half]
    main = areas(xs, ys, field, operate)
    lobes = [loop for loop in main if not _on_axis(loop)] + areas(xs, ys, against, operate)
    holds = areas(xs, ys, field, release) + areas(xs, ys, against, release)
    return Map([loop for loop in main if _on_axis(loop)], lobes, holds)


def _steps(low: float, high: float) -> list[float]:
    return [low + _STEP * step for step in range(round((high - low) / _STEP) + 1)]


def _on_axis(loop: list[Spot]) -> bool:
    return min(x for x, _ in loop) < 0 < max(x for x, _ in loop)


def _parts(plan: Plan, figures: Figures) -> tuple[Magnet, float, float]:
    from latchside.figures.models.reed_gap import Magnet

    given = figures[FIGURE].answer(example(figures[FIGURE], mount=plan.mount)).inputs
    size = given["diameter_mm"]
    magnet = Magnet(given["remanence_t"], given["length_mm"], size, size, round=True)
    return magnet, given["operate_mt"], given["release_mt"]


def _field(plan: Plan, magnet: Magnet, offset: float, gap: float, steel: float | None) -> float:
    """Field along the reed in mT, counted positive where the magnet is meant to work it; nothing inside the magnet."""
    from latchside.figures.models.reed_gap import field_along

    if plan.mount == "parallel":
        return -field_along(magnet, magnet.width / 2 + gap, offset, steel)
    if gap < 0 and offset < magnet.width / 2:
        return 0.0
    return field_along(magnet, offset, magnet.length / 2 + gap, steel)


def aside(plan: Plan, figures: Figures, steel: float | None = None) -> Aside:
    """What the reed does as the magnet is moved to one side at one gap, to a twentieth of a millimetre."""
    magnet, operate, _ = _parts(plan, figures)
    field = {offset: _field(plan, magnet, offset, plan.looked_at, steel) for offset in (n * 0.05 for n in range(1200))}
    lobe = [offset for offset, value in field.items() if value <= -operate]
    return Aside(next(offset for offset, value in field.items() if value < operate), lobe[0], lobe[-1])


def about(plan: Plan, figures: Figures) -> str:
    """What the two maps show, in words."""
    reed_gap = figures[FIGURE]
    air = reed_gap.answer(example(reed_gap, mount=plan.mount)).outputs
    steel = reed_gap.answer(example(reed_gap, mount=plan.mount, steel_mm=STEEL_MM)).outputs
    seen = aside(plan, figures)
    straight = message(
        "straight",
        closes=say(air["operate_mm"], "mm"),
        holds=say(air["release_mm"], "mm"),
        steel=say(STEEL_MM, "mm"),
        closes_over_steel=say(steel["operate_mm"], "mm"),
        share=say(steel["of_label_percent"], "%"),
    )
    lobes = message(
        f"lobes-{plan.mount}",
        gap=say(abs(plan.looked_at), "mm"),
        opens=say(seen.closed, "mm"),
        start=say(seen.lobe, "mm"),
        end=say(seen.end, "mm"),
    )
    return f"{message(f'lie-{plan.mount}')} {straight} {lobes}"


CHARTS = (
    Chart("reach-parallel", FIGURE, (FIGURE,), parallel),
    Chart("reach-end-on", FIGURE, (FIGURE,), end_on),
)
