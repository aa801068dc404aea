"""Drawings of the wired-input transmitter: its parts, its terminals, and which way round its cell goes."""

from __future__ import annotations

from latchside.drawings.canvas import INK, SMALL, Drawing, Sheet
from latchside.drawings.symbols import (
    contact,
    heading,
    reed_glass,
    resistor,
    screw_hole,
    tag,
    terminal,
    words,
)


def cell(sheet: Sheet, x: float, y: float, w: float, h: float, *, plus_right: bool) -> None:
    """A cylinder cell lying on its side, with its nub and both signs."""
    nub = x + w if plus_right else x - 7
    sheet.rect(x, y, w, h, round_=3, line=2)
    sheet.rect(nub, y + h / 2 - 7, 7, 14, fill=INK, line=0)
    left, right = ("−", "+") if plus_right else ("+", "−")
    sheet.text(x + 14, y + h / 2 + 6, left, size=16, anchor="middle", bold=True)
    sheet.text(x + w - 14, y + h / 2 + 6, right, size=16, anchor="middle", bold=True)


def inside() -> Drawing:
    """The transmitter with its cover off."""
    sheet = Sheet(
        "transmitter-parts",
        "Wired-input transmitter, cover off",
        "Inside: the aerial, the cell in its holder with plus marked on both, the indicator light, the "
        "cover tamper, the transmitter's own reed with a mark on that side, the terminals for a wired "
        "contact, the cable entry and the screw holes.",
        326,
    )
    sheet.rect(24, 96, 312, 160, round_=8, line=2.5)
    sheet.path("M46 142 l0 22 l10 0 l0 -22 l10 0 l0 22 l10 0 l0 -22 l10 0 l0 34", line=2)
    screw_hole(sheet, 44, 118, r=7)
    screw_hole(sheet, 316, 200, r=7)
    sheet.rect(112, 112, 116, 50, round_=4)
    cell(sheet, 120, 120, 92, 34, plus_right=True)
    sheet.text(239, 142, "+", size=16, anchor="middle", bold=True)
    sheet.circle(268, 120, 6, line=2)
    sheet.rect(294, 108, 28, 28, line=1.5)
    sheet.circle(308, 122, 9, line=2)
    reed_glass(sheet, 102, 232, closed=False, half=52)
    sheet.path("M97 256 L102 248 L107 256 Z", fill=INK, line=0)
    sheet.rect(204, 204, 76, 36, line=2)
    terminal(sheet, 224, 222, r=9)
    terminal(sheet, 260, 222, r=9)
    sheet.path("M296 256 a13 13 0 0 1 26 0", dash="4 3")
    _inside_names(sheet)
    return sheet.finish()


def _inside_names(sheet: Sheet) -> None:
    """The names around the open transmitter."""
    tag(sheet, 50, 36, "screw holes", (46, 114))
    tag(sheet, 78, 66, "aerial", (76, 144))
    tag(sheet, 152, 66, "cell", (158, 124))
    tag(sheet, 196, 36, "+ of holder", (238, 128))
    tag(sheet, 258, 66, "light", (267, 117))
    tag(sheet, 298, 36, "cover tamper", (310, 116))
    tag(sheet, 58, 290, "own reed", (72, 238), below=True)
    tag(sheet, 120, 316, "mark, reed side", (103, 254), below=True)
    tag(sheet, 210, 290, "terminals", (218, 236), below=True)
    tag(sheet, 304, 290, "cable entry", (308, 249), below=True)


def terminals() -> Drawing:
    """The cable pair of a wired contact on the terminals, the own reed beside them."""
    sheet = Sheet(
        "transmitter-terminals",
        "Terminals of the transmitter",
        "The cable pair of a wired contact is on the two terminals, one wire under each clamp. The end- "
        "of-line resistor, where the transmitter asks for one, sits at the contact. The transmitter's "
        "own reed is another input, or has one identity with them. The pair's input is the one to enrol.",
        394,
    )
    sheet.path("M20 24 L20 128 Q20 136 28 136 L332 136 Q340 136 340 128 L340 24", line=2.5)
    sheet.path("M20 24" + " l20 8 l20 -8" * 8, line=1)
    reed_glass(sheet, 96, 112, closed=False, half=52)
    sheet.rect(196, 90, 112, 36, line=2)
    for x in (226, 278):
        terminal(sheet, x, 108, r=10)
        sheet.line(x, 118, x, 292, line=2)
    words(sheet, 96, 60, ("own reed:", "one input"), anchor="middle")
    words(sheet, 252, 60, ("terminals:", "the other input"), anchor="middle")
    sheet.label(190, 180, "one wire under", 223, 128, anchor="end")
    words(sheet, 190, 196, ("each clamp",), anchor="end")
    sheet.label(190, 240, "cable pair", 226, 232, anchor="end")
    sheet.rect(150, 264, 194, 92, round_=6, dash="6 4", fill="none")
    sheet.line(226, 292, 226, 340, line=2)
    resistor(sheet, 226, 302, upright=True, long=36)
    sheet.line(226, 340, 278, 340, line=2)
    contact(sheet, 278, 292, 340)
    words(sheet, 140, 300, ("at the", "opening"), anchor="end", bold=True)
    sheet.text(212, 307, "resistor", size=SMALL, anchor="end")
    sheet.text(288, 321, "contact", size=SMALL)
    words(sheet, 180, 382, ("Enrol the input that the cable is on.",), anchor="middle", bold=True)
    return sheet.finish()


def polarity() -> Drawing:
    """Plus to plus, for a cylinder cell and a coin cell, and a cell put in the wrong way."""
    sheet = Sheet(
        "cell-polarity",
        "Which way round the cell goes",
        "Cylinder cell: the end with the nub is plus and lies at the plus sign of the holder; the flat "
        "end lies at the minus sign, often at a spring. Coin cell from the side: the broad case is "
        "plus, the smaller cap is minus. Reversed, with plus at the minus sign, the part is dead.",
        482,
    )
    heading(sheet, 24, "Cylinder cell: + to +")
    _holder(sheet, 44)
    cell(sheet, 112, 56, 150, 40, plus_right=True)
    tag(sheet, 112, 138, "flat end is −", (118, 92), below=True)
    tag(sheet, 262, 138, "nub is +", (265, 80), below=True)
    heading(sheet, 184, "Coin cell, from the side")
    sheet.path("M76 214 L244 214 L244 232 Q244 240 236 240 L84 240 Q76 240 76 232 Z", line=2)
    sheet.path("M102 240 L218 240 L210 252 L110 252 Z", line=2)
    sheet.text(160, 233, "+", size=16, anchor="middle", bold=True)
    sheet.text(160, 274, "−", size=16, anchor="middle", bold=True)
    sheet.label(264, 222, "case is +", 242, 224)
    sheet.label(264, 262, "cap is −", 212, 246)
    heading(sheet, 312, "Reversed: the part is dead")
    _holder(sheet, 332)
    cell(sheet, 112, 344, 150, 40, plus_right=False)
    for way in (1, -1):
        sheet.line(150, 364 - 38 * way, 224, 364 + 38 * way, line=4)
    words(
        sheet,
        180,
        440,
        ("Read the + on the cell and", "the + in the holder first."),
        anchor="middle",
        bold=True,
    )
    return sheet.finish()


def _holder(sheet: Sheet, y: float) -> None:
    """An empty holder for a cylinder cell: spring at minus on the left, plate at plus on the right."""
    sheet.rect(76, y, 208, 64, round_=5)
    sheet.path(f"M78 {y + 32:g} l5 -12 l6 24 l6 -24 l6 24 l5 -12", line=2)
    sheet.rect(276, y + 14, 5, 36, fill=INK, line=0)
    sheet.text(58, y + 39, "−", size=20, anchor="middle", bold=True)
    sheet.text(304, y + 39, "+", size=20, anchor="middle", bold=True)
