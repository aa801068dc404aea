"""Symbols that several drawings share: circuit symbols, arrows and leaders.

Every function draws on the sheet it is given and returns nothing.
"""

from __future__ import annotations

from collections.abc import Sequence

from latchside.drawings.canvas import ACCENT, INK, LINE, PAPER, SMALL, THIN, Sheet, number

LINE_STEP = 16


def resistor(sheet: Sheet, x: float, y: float, *, upright: bool = False, long: float = 40) -> None:
    """The IEC rectangle, centred on x, y, to be drawn over the wire that it sits in."""
    wide, high = (14.0, long) if upright else (long, 14.0)
    sheet.rect(x - wide / 2, y - high / 2, wide, high)


def contact(sheet: Sheet, x: float, top: float, bottom: float, *, closed: bool = True) -> None:
    """A contact in an upright wire from top to bottom, drawn closed or open."""
    upper, lower = (top + bottom) / 2 - 12, (top + bottom) / 2 + 12
    sheet.line(x, top, x, upper)
    sheet.line(x, lower, x, bottom)
    sheet.line(x, lower, x if closed else x + 14, upper if closed else upper + 2, colour=ACCENT)
    sheet.circle(x, upper, 3.5)
    sheet.circle(x, lower, 3.5)


def terminal(sheet: Sheet, x: float, y: float, *, r: float = 6) -> None:
    """A screw terminal: a circle with its slot."""
    sheet.circle(x, y, r)
    sheet.line(x - r * 0.6, y + r * 0.6, x + r * 0.6, y - r * 0.6)


def dot(sheet: Sheet, x: float, y: float) -> None:
    """A joint between wires."""
    sheet.circle(x, y, 3, fill=INK, line=0)


def arrow(sheet: Sheet, x1: float, y1: float, x2: float, y2: float, *, line: float = LINE) -> None:
    """A straight arrow from the first point to the second."""
    long = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
    ux, uy = (x2 - x1) / long, (y2 - y1) / long
    bx, by = x2 - 8 * ux, y2 - 8 * uy
    sheet.line(x1, y1, bx, by, line=line)
    corners = ((x2, y2), (bx - 4 * uy, by + 4 * ux), (bx + 4 * uy, by - 4 * ux))
    polygon(sheet, corners, fill=INK, line=0)


def span(sheet: Sheet, x1: float, y1: float, x2: float, y2: float) -> None:
    """A distance with an arrow head at both ends and no words, for words placed elsewhere."""
    mx, my = (x1 + x2) / 2, (y1 + y2) / 2
    arrow(sheet, mx, my, x1, y1)
    arrow(sheet, mx, my, x2, y2)


def polygon(
    sheet: Sheet,
    points: Sequence[tuple[float, float]],
    *,
    fill: str = PAPER,
    line: float = LINE,
    dash: str | None = None,
) -> None:
    """A closed shape through the points."""
    d = " L".join(f"{number(round(x, 2))} {number(round(y, 2))}" for x, y in points)
    sheet.path(f"M{d} Z", fill=fill, line=line, dash=dash)


def words(sheet: Sheet, x: float, y: float, lines: Sequence[str], *, anchor: str = "start", bold: bool = False) -> None:
    """Several lines of small text, one under another."""
    for index, line in enumerate(lines):
        sheet.text(x, y + index * LINE_STEP, line, size=SMALL, anchor=anchor, bold=bold)


def tag(sheet: Sheet, x: float, y: float, text: str, tip: tuple[float, float], *, below: bool = False) -> None:
    """Centred words over the thing they name, or under it, with a leader from their middle to its tip."""
    sheet.line(x, y - 13 if below else y + 4, *tip, line=THIN)
    sheet.circle(*tip, 2, fill=INK, line=0)
    sheet.text(x, y, text, size=SMALL, anchor="middle")


def heading(sheet: Sheet, y: float, text: str, *, x: float = 8) -> None:
    """A bold line that opens a part of a sheet."""
    sheet.text(x, y, text, bold=True)


def reed_glass(sheet: Sheet, x: float, y: float, *, closed: bool, half: float = 48) -> None:
    """A level reed centred on x, y: the glass, its two leads, and the blades touching or apart."""
    sheet.rect(x - half * 0.75, y - 11, half * 1.5, 22, round_=11, line=THIN)
    apart = 0.0 if closed else 4.0
    for way in (1, -1):
        lead, tip = x - way * half * 0.6, x + way * 9
        sheet.line(x - way * half, y, lead, y, colour=ACCENT)
        sheet.line(lead, y, tip, y - way * (apart + 1.5), colour=ACCENT)
