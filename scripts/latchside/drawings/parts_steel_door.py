"""Drawings of the steel-door contact: in section, its sleeve in the sheet, and the two kinds of top edge."""

from __future__ import annotations

from latchside.drawings.canvas import Drawing, Sheet
from latchside.drawings.parts_surface import MAGNET_FILL
from latchside.drawings.symbols import heading, pinch, reed_glass, span, tag, words

SLEEVE_FILL = "#c9c9c9"
"""Plastic of the sleeve."""


def section() -> Drawing:
    """Both halves in their sleeves, in the hollow of frame and door, end on across the gap."""
    sheet = Sheet(
        "steel-door-section",
        "Steel-door contact in section",
        "A cut through a hollow steel frame and a hollow steel door. The reed lies in a barrel in the frame and the "
        "strong magnet in a barrel in the edge of the door, each in a plastic sleeve that keeps the steel away all "
        "round. Both lie on one axis. The cable leaves through the hollow of the frame. The gap is measured from "
        "flange to flange with the door closed.",
        322,
    )
    sheet.text(92, 24, "frame", anchor="middle", bold=True)
    sheet.text(270, 24, "door", anchor="middle", bold=True)
    _shell(sheet, 10, 178, open_left=True)
    _shell(sheet, 192, 352, open_left=False)
    for left, right, flange in ((62, 178, 174), (192, 286, 192)):
        sheet.rect(left, 126, right - left, 56, fill=SLEEVE_FILL, line=1.5)
        sheet.rect(flange, 118, 4, 72, fill=SLEEVE_FILL, line=1)
    sheet.rect(72, 134, 102, 40, round_=4, line=2)
    reed_glass(sheet, 124, 154, closed=True, half=44)
    sheet.rect(196, 134, 60, 40, fill=MAGNET_FILL, round_=3, line=2)
    for y, bend in ((150, 146), (158, 162)):
        sheet.path(f"M72 {y} H52 Q40 {y} 34 {bend} H10", line=2)
    sheet.line(182, 154, 352, 154, line=1, dash="6 3")
    for x in (178, 192):
        sheet.line(x, 96, x, 62, line=1)
    pinch(sheet, 178, 192, 66)
    sheet.text(185, 50, "gap", size=13, anchor="middle")
    tag(sheet, 30, 84, "cable", (26, 146))
    tag(sheet, 84, 84, "sleeve", (84, 130))
    tag(sheet, 138, 84, "reed", (132, 149))
    tag(sheet, 240, 84, "strong magnet", (226, 140))
    tag(sheet, 326, 84, "axis", (326, 154))
    tag(sheet, 50, 254, "hollow", (50, 196), below=True)
    tag(sheet, 112, 254, "steel sheet", (112, 211), below=True)
    tag(sheet, 222, 254, "sleeve", (222, 179), below=True)
    tag(sheet, 306, 254, "hollow", (310, 190), below=True)
    words(sheet, 180, 286, ("A sleeve round each half, both flush,", "on one axis."), anchor="middle", bold=True)
    return sheet.finish()


def _shell(sheet: Sheet, left: float, right: float, *, open_left: bool) -> None:
    """A hollow steel section cut open: two faces, and the face that looks across the gap, with its hole."""
    for y in (96, 206):
        sheet.rect(left, y, right - left, 9, fill="steel", line=1.5)
    x = right - 9 if open_left else left
    for top, bottom in ((96, 126), (182, 215)):
        sheet.rect(x, top, 9, bottom - top, fill="steel", line=1.5)


def sleeve() -> Drawing:
    """The hole in the sheet with its burr and without, and the sleeve with its half."""
    sheet = Sheet(
        "steel-door-sleeve",
        "The sleeve in its hole",
        "Left: a hole drilled through the sheet, with burrs that cut leads and chips that the strong magnet collects. "
        "Right: the edge deburred and painted, the plastic sleeve pressed in with its flange flat on the sheet, and "
        "the barrel pushed into the sleeve by thumb.",
        330,
    )
    _burred(sheet)
    heading(sheet, 22, "Like this", x=196)
    sheet.rect(196, 62, 44, 12, fill="steel", line=2)
    sheet.rect(304, 62, 44, 12, fill="steel", line=2)
    for x in (240, 296):
        sheet.rect(x, 62, 8, 92, fill=SLEEVE_FILL, line=1.5)
    for x in (228, 296):
        sheet.rect(x, 56, 20, 6, fill=SLEEVE_FILL, line=1.5)
    sheet.rect(252, 60, 40, 84, round_=3, line=2)
    sheet.rect(246, 50, 52, 10, round_=2, line=2)
    for x in (264, 280):
        sheet.path(f"M{x} 144 V170", line=2)
    sheet.path("M272 30 V46 M266 40 L272 47 L278 40", line=2)
    sheet.label(232, 112, "sleeve", 244, 114, anchor="end")
    sheet.label(312, 112, "barrel", 286, 108)
    sheet.label(286, 38, "by thumb", 276, 38)
    sheet.label(232, 148, "painted", 239, 72, anchor="end")
    words(sheet, 232, 164, ("edge",), anchor="end")
    _rings(sheet)
    return sheet.finish()


def _burred(sheet: Sheet) -> None:
    """A hole as the bit leaves it: burrs at the leads, chips about."""
    heading(sheet, 22, "Not like this")
    sheet.rect(10, 62, 44, 12, fill="steel", line=2)
    sheet.rect(110, 62, 44, 12, fill="steel", line=2)
    for x, way in ((54, 1), (110, -1)):
        sheet.path(f"M{x} 74 l{4 * way} 12 l{-6 * way} -2 Z", line=1.5)
    for x, y in ((70, 96), (84, 104), (98, 92), (78, 112), (90, 86)):
        sheet.path(f"M{x} {y} l5 -3 l2 4", line=1.5)
    sheet.path("M70 40 V70 L62 84 V130", line=2)
    sheet.path("M80 40 V130", line=2)
    sheet.label(104, 132, "burr cuts", 57, 82)
    words(sheet, 104, 148, ("the lead",))
    sheet.label(104, 112, "chips", 88, 104)


def _rings(sheet: Sheet) -> None:
    """The half from its end: steel, sleeve, barrel, and where the field keeps its room."""
    heading(sheet, 198, "From the end")
    sheet.rect(10, 210, 132, 96, fill="steel", line=2)
    sheet.circle(76, 258, 40, fill=SLEEVE_FILL, line=2)
    sheet.circle(76, 258, 22, fill=MAGNET_FILL, line=2)
    span(sheet, 98, 258, 116, 258)
    sheet.label(160, 238, "steel", 134, 226)
    sheet.label(160, 262, "sleeve, all round: steel off", 110, 266)
    sheet.label(160, 286, "magnet or reed in its barrel", 84, 272)


def top_edge() -> Drawing:
    """The top edge of a steel door: closed and flat, or an open channel with a clip."""
    sheet = Sheet(
        "steel-door-top-edge",
        "The top edge of a steel door",
        "A cut along the top of the door. Left: a flat top edge takes the hole and the sleeve of the magnet. Right: "
        "many doors end in an open channel. A clip or cap that is screwed or sprung between its sides carries the "
        "magnet level with the edge. Where neither can be had, the latch edge is used, high up and clear of the lock.",
        340,
    )
    heading(sheet, 22, "Flat top edge")
    heading(sheet, 22, "Open channel", x=196)
    for x in (10, 196):
        sheet.rect(x, 40, 150, 12, fill="steel", line=1.5)
        sheet.text(x + 4, 36, "frame head", size=13)
        sheet.rect(x + 55, 40, 40, 24, fill=SLEEVE_FILL, line=1.5)
        sheet.line(x + 75, 40, x + 75, 60, line=2, dash="5 3")
    _flat(sheet)
    _channel(sheet)
    words(
        sheet, 8, 272,
        ("Magnet level with the edge, opposite the reed.", "No clip to be had: the latch edge, high up,",
         "clear of lock, strike and rods."),
    )  # fmt: skip
    words(sheet, 8, 326, ("Not on a fire door without written permission.",), bold=True)
    return sheet.finish()


def _flat(sheet: Sheet) -> None:
    """A door whose top edge is closed by sheet, with the magnet in it."""
    for x, y, w, h in ((22, 78, 42, 10), (106, 78, 42, 10), (22, 78, 10, 150), (138, 78, 10, 150)):
        sheet.rect(x, y, w, h, fill="steel", line=1.5)
    sheet.rect(64, 76, 42, 60, fill=SLEEVE_FILL, line=1.5)
    sheet.rect(72, 78, 26, 40, fill=MAGNET_FILL, round_=3, line=2)
    tag(sheet, 85, 168, "sleeve", (85, 128), below=True)
    sheet.label(74, 206, "magnet", 78, 104, anchor="start")
    sheet.text(85, 246, "door, hollow", size=13, anchor="middle")


def _channel(sheet: Sheet) -> None:
    """A door whose top edge is a channel, with the clip that carries the magnet."""
    for x in (208, 324):
        sheet.rect(x, 78, 10, 150, fill="steel", line=1.5)
    sheet.rect(218, 140, 106, 10, fill="steel", line=1.5)
    sheet.path("M218 92 H330 M218 92 V120 M324 92 V120", line=3)
    sheet.rect(250, 76, 42, 50, fill=SLEEVE_FILL, line=1.5)
    sheet.rect(258, 78, 26, 40, fill=MAGNET_FILL, round_=3, line=2)
    tag(sheet, 271, 182, "channel", (271, 147), below=True)
    sheet.label(232, 206, "clip", 224, 110)
    sheet.text(271, 246, "door, open on top", size=13, anchor="middle")
