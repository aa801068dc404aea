"""The drawing of how a contact is proved."""

from __future__ import annotations

from collections.abc import Sequence

from latchside.drawings.canvas import ACCENT, FRAME_FILL, INK, THIN, Drawing, Sheet
from latchside.drawings.symbols import arrow, heading, polygon, span, tag, words
from latchside.messages import messages

message = messages(__name__)

HINGE, LATCH, THICK = 50.0, 258.0, 30.0
"""Where the door hangs and ends, in plan, and how thick it is; the room is below its face."""
TRIP = (0.9703, 0.2419)
LIMIT = (0.8829, 0.4695)
"""Cosine and sine of the angle of the door at the moment of the trip and at the limit, as drawn: 14 and 28 degrees."""
Point = tuple[float, float]


def _frame(sheet: Sheet, face: float) -> None:
    """Both sides of the frame in plan, and the sensor at the latch side."""
    sheet.rect(8, face - 38, 38, 38, fill=FRAME_FILL)
    sheet.rect(264, face - 38, 88, 38, fill=FRAME_FILL)
    sheet.rect(268, face, 38, 22, round_=4)
    sheet.line(273, face + 4, 273, face + 18, colour=ACCENT)


def _turned(corners: Sequence[Point], face: float, angle: Point) -> list[Point]:
    """Points of the closed door, turned about the hinge into the room."""
    cos, sin = angle
    ways = [(x - HINGE, y - face) for x, y in corners]
    return [(HINGE + dx * cos - dy * sin, face + dx * sin + dy * cos) for dx, dy in ways]


def _corners(left: float, top: float, right: float, bottom: float) -> tuple[Point, ...]:
    return (left, top), (right, top), (right, bottom), (left, bottom)


def _end_one(sheet: Sheet, face: float) -> None:
    """Closed and latched: push and pull through the play."""
    _frame(sheet, face)
    sheet.rect(HINGE, face - THICK, LATCH - HINGE, THICK, fill="leaf")
    sheet.rect(LATCH, face - 21, 14, 10, fill=INK, line=0)
    sheet.circle(HINGE - 2, face, 4)
    sheet.rect(230, face, 26, 18, fill=ACCENT, round_=3)
    sheet.line(HINGE, face + 1, 226, face + 13, line=THIN, dash="5 4")
    arrow(sheet, 96, face + 46, 96, face + 14)
    words(sheet, 96, face + 64, (message("push"),), anchor="middle")
    arrow(sheet, 146, face + 14, 146, face + 46)
    words(sheet, 146, face + 64, (message("pull"),), anchor="middle")
    arrow(sheet, 206, face - 28, 206, face, line=THIN)
    arrow(sheet, 206, face + 40, 206, face + 12, line=THIN)
    sheet.text(206, face + 58, message("play"), size=15, anchor="middle", bold=True)
    tag(sheet, 256, face + 44, message("magnet"), (246, face + 19), below=True)
    tag(sheet, 320, face + 44, message("sensor"), (300, face + 21), below=True)


def _end_two(sheet: Sheet, face: float) -> None:
    """Open slowly: the trip comes inside the limit."""
    _frame(sheet, face)
    limit = _turned(_corners(HINGE, face - THICK, LATCH, face), face, LIMIT)
    polygon(sheet, limit, fill="none", line=THIN, dash="5 4")
    trip = _turned(_corners(HINGE, face - THICK, LATCH, face), face, TRIP)
    polygon(sheet, trip, fill="leaf")
    sheet.circle(HINGE - 2, face, 4)
    polygon(sheet, _turned(_corners(230, face, 256, face + 18), face, TRIP), fill=ACCENT)
    (edge_x, edge_y), (limit_x, limit_y) = trip[1], limit[1]
    span(sheet, 262, face + 3, edge_x + 2, edge_y)
    words(sheet, 280, face + 44, (message("opening"), message("opening.at-trip")), bold=True)
    tag(sheet, limit_x + 46, limit_y + 34, message("limit"), (limit_x + 1, limit_y + 4), below=True)
    arrow(sheet, 118, face + 62, 108, face + 92)
    words(sheet, 104, face + 110, (message("slowly"),), anchor="middle")


def two_ends() -> Drawing:
    """Closed, it never trips; opened, it trips inside the limit."""
    sheet = Sheet("two-ends-of-proof", message("title"), message("about"), 432)
    heading(sheet, 20, message("end-one"))
    _end_one(sheet, 76)
    words(sheet, 8, 166, (message("no-trip"),))
    heading(sheet, 212, message("end-two"))
    _end_two(sheet, 268)
    words(sheet, 8, 404, (message("trips-inside"),))
    words(sheet, 8, 424, (message("write-down"),), bold=True)
    return sheet.finish()
