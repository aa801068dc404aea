"""The drawing of how a contact is proved."""

from __future__ import annotations

from latchside.drawings.canvas import FRAME_FILL, INK, MAGNET_FILL, METAL_FILL, SMALL, Drawing, Sheet
from latchside.drawings.symbols import arrow, heading, polygon, span, tag, words
from latchside.messages import messages

message = messages(__name__)

HINGE = 50.0
SLANT = (0.927, 0.375)
"""Cosine and sine of the angle of the leaf at the moment of the trip, as drawn."""


def _frame(sheet: Sheet, face: float) -> None:
    """Both sides of the frame in plan, and the sensor at the latch side; the room is below `face`."""
    sheet.rect(10, face - 38, 36, 38, fill=FRAME_FILL, line=2)
    sheet.rect(264, face - 38, 86, 38, fill=FRAME_FILL, line=2)
    sheet.rect(268, face, 36, 22, round_=3, line=2)


def _turned(x: float, y: float, face: float) -> tuple[float, float]:
    """A point of the shut leaf, turned about the hinge into the room."""
    cos, sin = SLANT
    dx, dy = x - HINGE, y - face
    return HINGE + dx * cos - dy * sin, face + dx * sin + dy * cos


def _end_one(sheet: Sheet, face: float) -> None:
    """Shut and latched: push and pull through the play."""
    _frame(sheet, face)
    sheet.rect(HINGE, face - 30, 208, 30, line=2)
    sheet.rect(258, face - 22, 14, 10, fill=INK, line=0)
    sheet.circle(HINGE - 2, face, 4, line=2)
    sheet.text(112, face - 10, message("leaf"), size=SMALL, anchor="middle")
    sheet.rect(230, face, 26, 18, fill=MAGNET_FILL, round_=3, line=2)
    for way in (1, -1):
        sheet.line(HINGE, face, 228, face + 10 * way, line=1, dash="5 3")
    arrow(sheet, 206, face - 28, 206, face - 9, line=1.5)
    arrow(sheet, 206, face + 28, 206, face + 9, line=1.5)
    sheet.text(206, face + 46, message("play"), anchor="middle", bold=True)
    arrow(sheet, 90, face + 46, 90, face + 12)
    sheet.text(90, face + 64, message("push"), size=SMALL, anchor="middle")
    arrow(sheet, 146, face + 12, 146, face + 46)
    sheet.text(146, face + 64, message("pull"), size=SMALL, anchor="middle")
    tag(sheet, 324, face + 52, message("sensor"), (296, face + 20), below=True)
    tag(sheet, 262, face + 72, message("magnet"), (250, face + 18), below=True)


def _end_two(sheet: Sheet, face: float) -> None:
    """Open slowly: the trip comes inside the limit."""
    _frame(sheet, face)
    sheet.rect(HINGE, face - 30, 208, 30, line=1, dash="5 4", fill="none")
    corners = ((HINGE, face - 30), (258, face - 30), (258, face), (HINGE, face))
    polygon(sheet, [_turned(x, y, face) for x, y in corners], line=2)
    sheet.circle(HINGE - 2, face, 4, line=2)
    magnet = ((230, face), (256, face), (256, face + 18), (230, face + 18))
    polygon(sheet, [_turned(x, y, face) for x, y in magnet], fill=MAGNET_FILL, line=2)
    tip_x, tip_y = _turned(258, face - 30, face)
    span(sheet, 263, face + 1, round(tip_x, 1), round(tip_y, 1))
    words(sheet, 270, face + 42, (message("opening"), message("opening.at-trip")), bold=True)
    arrow(sheet, 120, face + 72, 112, face + 104)
    sheet.text(106, face + 122, message("slowly"), size=SMALL, anchor="middle")


def two_ends() -> Drawing:
    """Shut, it never trips; opened, it trips inside the limit."""
    sheet = Sheet(
        "two-ends-of-proof",
        message("title"),
        message("about"),
        532,
    )
    heading(sheet, 24, message("end-one"))
    _end_one(sheet, 80)
    words(sheet, 8, 186, (message("no-trip"),))
    heading(sheet, 226, message("end-two"))
    _end_two(sheet, 284)
    sheet.rect(150, 428, 50, 14, fill=METAL_FILL)
    sheet.rect(150, 452, 96, 14)
    sheet.text(140, 440, message("opening-short"), size=SMALL, anchor="end")
    sheet.text(140, 464, message("limit"), size=SMALL, anchor="end")
    words(sheet, 8, 494, (message("trips-inside"),))
    words(sheet, 8, 520, (message("write-down"),), bold=True)
    return sheet.finish()
