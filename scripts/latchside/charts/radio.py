"""Charts of radio: the loss of a path against its distance, and the chance of a missed window against lost reports."""

from __future__ import annotations

from collections.abc import Callable

from latchside.charts.axes import DASHES, Axes, Scale, key
from latchside.charts.chart import Chart, Figures, example
from latchside.drawings.canvas import Drawing, Sheet
from latchside.drawings.symbols import heading
from latchside.figures.rounding import say
from latchside.messages import listed, messages

message = messages(__name__)

COUNTS = (0, 1, 2)
"""Walls or floors on the way, a curve for each."""
WALL = ("brick", 100.0)
"""The wall that is counted: its material and its thickness in mm."""
NEAREST, FARTHEST = 1.0, 100.0
DISTANCES = {1.0: "1", 3.0: "3", 10.0: "10", 30.0: "30", 100.0: "100"}
_PANEL = 302
WINDOWS_H = (2.0, 4.0, 12.0)
"""Supervision windows in hours, a curve for each."""
CHANCES = {1.0: "certain", 1e-2: "hundred", 1e-4: "ten-thousand", 1e-6: "million"}
"""Marks of the axis of chances, each with its message."""


def loss_with_distance(figures: Figures) -> Drawing:
    """Walls counted one by one, and floors with the slope of a home."""
    sheet = Sheet("loss-with-distance", message("loss-title"), _loss_about(figures), 2 * _PANEL)
    panels: tuple[tuple[str, Callable[[Figures, float, int], float]], ...] = (("walls", walls), ("floors", floors))
    for index, (panel, loss) in enumerate(panels):
        top = index * _PANEL
        heading(sheet, top + 18, message(f"panel-{panel}"))
        axes = Axes(sheet, Scale(NEAREST, FARTHEST, 44, 340, log=True), Scale(20, 90, top + 250, top + 48))
        axes.frame(DISTANCES, {float(v): f"{v}" for v in range(20, 91, 10)}, message("distance"), message("loss"))
        for count, dash in zip(COUNTS, DASHES, strict=True):
            axes.curve(((at, loss(figures, at, count)) for at in axes.x.steps(40)), dash=dash)
        entries = [(dash, message(f"key-{panel}", count=count)) for count, dash in zip(COUNTS, DASHES, strict=True)]
        key(sheet, 56, top + 64, entries)
    return sheet.finish()


def walls(figures: Figures, distance_m: float, count: int) -> float:
    """Loss in dB over a distance in free air, with so many brick walls on the way."""
    frequency = _frequency(figures)
    free = figures["free-space-loss"].answer({"frequency_mhz": frequency, "distance_m": distance_m})
    return float(free.outputs["loss_db"]) + count * wall_db(figures)


def floors(figures: Figures, distance_m: float, count: int) -> float:
    """Loss in dB over a distance in a home, with so many floors on the way."""
    answer = figures["indoor-loss"].answer(example(figures["indoor-loss"], distance_m=distance_m, floors=count))
    return float(answer.outputs["loss_db"])


def wall_db(figures: Figures) -> float:
    """Loss in dB of one brick wall."""
    inputs = {"material": WALL[0], "thickness_mm": WALL[1], "frequency_mhz": _frequency(figures)}
    return float(figures["slab-loss"].answer(inputs).outputs["loss_db"])


def _frequency(figures: Figures) -> float:
    return float(figures["indoor-loss"].answer(example(figures["indoor-loss"])).inputs["frequency_mhz"])


def _loss_about(figures: Figures) -> str:
    near, far = 10.0, 30.0
    free, home = (
        listed([message("loss-at", loss=say(loss(figures, at, 0), "dB"), distance=say(at, "m")) for at in (near, far)])
        for loss in (walls, floors)
    )
    floor = floors(figures, near, 1) - floors(figures, near, 0)
    return message(
        "loss-about",
        frequency=say(_frequency(figures), "MHz", 5),
        free=free,
        thickness=say(WALL[1], "mm"),
        wall=say(wall_db(figures), "dB"),
        home=home,
        floor=say(floor, "dB"),
    )


def missed_check_ins(figures: Figures) -> Drawing:
    """The chance that every check-in of a window is lost, for three windows."""
    sheet = Sheet("missed-check-ins", message("missed-title"), _missed_about(figures), 348)
    axes = Axes(sheet, Scale(0, 90, 112, 340), Scale(1e-6, 1, 232, 40, log=True))
    names = {float(share): f"{share}" for share in range(0, 91, 15)}
    chances = {chance_: message(f"chance-{name}") for chance_, name in CHANCES.items()}
    axes.frame(names, chances, message("lost"), message("chance"))
    for window, dash in zip(WINDOWS_H, DASHES, strict=True):
        shares = [share / 2 for share in range(1, 181)]
        points = [(share, chance(figures, window, share / 100)) for share in shares]
        axes.curve([point for point in points if point[1] >= axes.y.low], dash=dash)
    entries = [
        (dash, message("key-window", window=say(window, "h"), tries=tries(figures, window)))
        for window, dash in zip(WINDOWS_H, DASHES, strict=True)
    ]
    key(sheet, 112, 290, entries)
    return sheet.finish()


def chance(figures: Figures, window_h: float, loss: float) -> float:
    """Chance that all check-ins of one window are lost, where each is lost with the chance `loss`."""
    inputs = example(figures["missed-check-in"], window_h=window_h, loss_probability=loss)
    return float(figures["missed-check-in"].answer(inputs).outputs["chance_per_window"])


def tries(figures: Figures, window_h: float) -> int:
    """Check-ins that fall into one window."""
    answer = figures["missed-check-in"].answer(example(figures["missed-check-in"], window_h=window_h))
    return int(answer.outputs["tries_per_window"])


def _missed_about(figures: Figures) -> str:
    given = figures["missed-check-in"].answer(example(figures["missed-check-in"])).inputs
    half = [
        message("once-in", number=say(1 / chance(figures, window, 0.5), "count"), window=say(window, "h"))
        for window in WINDOWS_H
    ]
    return message("missed-about", interval=say(given["check_in_min"], "min"), half=listed(half))


CHARTS = (
    Chart("loss-with-distance", "indoor-loss", ("indoor-loss", "free-space-loss", "slab-loss"), loss_with_distance),
    Chart("missed-check-ins", "missed-check-in", ("missed-check-in",), missed_check_ins),
)
