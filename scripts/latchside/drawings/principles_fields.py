"""The drawing of what steel does to a magnet's field.

The field lines are traced, not sketched: two line poles for the magnet, and for the steel their mirror
images of opposite sign. Only plain arithmetic is used, so the same lines come out on every machine.
"""

from __future__ import annotations

from collections.abc import Sequence

from latchside.drawings.canvas import ACCENT, PLASTIC_FILL, THIN, Drawing, Sheet, number
from latchside.drawings.line import simplified
from latchside.drawings.symbols import heading, reed_glass, words
from latchside.messages import messages

message = messages(__name__)

Pole = tuple[float, float, float]
HALF = 34.0
REED_ABOVE = 46.0
MIDDLE = 232.0
STEP = 2.0
LINES = 24
TURN = (0.9659258, 0.2588190)
"""Cosine and sine of the angle between one line's start and the next, and of the first from the axis."""


def _poles(height: float | None) -> list[Pole]:
    """The magnet's poles as (x, y, strength), y upwards; `height` is that above a steel plate, or none."""
    if height is None:
        return [(-HALF, 0.0, 1.0), (HALF, 0.0, -1.0)]
    return [
        (-HALF, height, 1.0), (HALF, height, -1.0), (-HALF, -height, -1.0), (HALF, -height, 1.0),
    ]  # fmt: skip


def _direction(poles: Sequence[Pole], x: float, y: float) -> tuple[float, float]:
    fx = fy = 0.0
    for px, py, strength in poles:
        square = (x - px) ** 2 + (y - py) ** 2
        fx += strength * (x - px) / square
        fy += strength * (y - py) / square
    size: float = (fx * fx + fy * fy) ** 0.5
    return fx / size, fy / size


def trace(poles: Sequence[Pole], start: tuple[float, float], floor: float, ceiling: float) -> list[tuple[float, float]]:
    """The field line from a start near the first pole to the second, to the floor or off the drawing."""
    x, y = start
    points = [start]
    end_x, end_y, _ = poles[1]
    for _ in range(400):
        ux, uy = _direction(poles, x, y)
        mx, my = _direction(poles, x + ux * STEP / 2, y + uy * STEP / 2)
        x, y = x + mx * STEP, y + my * STEP
        if y <= floor:
            points.append((x, floor))
            break
        points.append((x, y))
        if abs(x) > 116 or y > ceiling or (x - end_x) ** 2 + (y - end_y) ** 2 < 9:
            break
    return points[::4] if (len(points) - 1) % 4 == 0 else [*points[::4], points[-1]]


def _starts(axis: float) -> list[tuple[float, float]]:
    """Points close round the first pole, evenly spaced, none of them on the axis."""
    ux, uy = 0.9914449, 0.1305262
    points = []
    for _ in range(LINES):
        points.append((-HALF + 4 * ux, axis + 4 * uy))
        ux, uy = ux * TURN[0] - uy * TURN[1], ux * TURN[1] + uy * TURN[0]
    return points


def _field(sheet: Sheet, base: float, height: float | None) -> float:
    """Field lines over a surface at `base`; returns where the magnet's middle is on the sheet.

    Lines that do not end at the second pole are drawn again, mirrored, as the lines that come in there.
    """
    poles = _poles(height)
    axis = poles[0][1]
    level = base - 40 if height is None else base
    floor, ceiling = (-38.0, 84.0) if height is None else (0.0, axis + 84.0)
    for start in _starts(axis):
        points = trace(poles, start, floor, ceiling)
        joined = abs(points[-1][0] - HALF) < 5 and abs(points[-1][1] - axis) < 5
        for way in (1,) if joined else (1, -1):
            line = simplified([(MIDDLE + way * x, level - y) for x, y in points])
            d = " L".join(f"{number(round(x, 1))} {number(round(y, 1))}" for x, y in line)
            sheet.path(f"M{d}", line=THIN, colour=ACCENT)
    return level - axis


def _magnet_and_reed(sheet: Sheet, middle: float, *, closed: bool) -> None:
    sheet.rect(MIDDLE - HALF - 6, middle - 9, 2 * HALF + 12, 18, fill=ACCENT, round_=3)
    sheet.rect(MIDDLE - 60, middle - REED_ABOVE - 14, 120, 28, round_=4, fill="none")
    reed_glass(sheet, MIDDLE, middle - REED_ABOVE, closed=closed, half=50)


def magnet() -> Drawing:
    """The magnet in air, on steel, and on steel with a spacer."""
    sheet = Sheet(
        "steel-steals-the-magnet",
        message("title"),
        message("about"),
        560,
    )
    heading(sheet, 24, message("in-air"))
    middle = _field(sheet, 172, None)
    _magnet_and_reed(sheet, middle, closed=True)
    words(sheet, 8, middle - REED_ABOVE, (message("closes"),))
    words(sheet, 8, middle + 4, (message("magnet"),))
    heading(sheet, 206, message("on-steel"))
    middle = _field(sheet, 334, 11)
    _magnet_and_reed(sheet, middle, closed=False)
    sheet.rect(110, 334, 242, 18, fill="steel")
    words(sheet, 8, middle - REED_ABOVE, (message("stays"), message("stays.open")))
    words(sheet, 8, 346, (message("steel"),))
    heading(sheet, 386, message("with-spacer"))
    middle = _field(sheet, 532, 34)
    _magnet_and_reed(sheet, middle, closed=True)
    sheet.rect(MIDDLE - HALF - 6, middle + 9, 2 * HALF + 12, 25, fill=PLASTIC_FILL)
    sheet.rect(110, 532, 242, 18, fill="steel")
    words(sheet, 8, middle - REED_ABOVE, (message("closes"),))
    sheet.label(70, 516, message("spacer"), MIDDLE - HALF + 2, middle + 22, anchor="end")
    words(sheet, 8, 546, (message("steel"),))
    return sheet.finish()
