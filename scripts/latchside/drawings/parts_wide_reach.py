"""Drawings of the wide-reach contact: its parts, its place at the floor, its bracket, and its tail to the joint box."""

from __future__ import annotations

from latchside.drawings.canvas import FRAME_FILL, INK, SMALL, Drawing, Sheet
from latchside.drawings.symbols import dot, heading, reed_glass, resistor, screw_hole, span, tag, words


def armour(sheet: Sheet, x: float, y: float, long: float, *, upright: bool = False) -> None:
    """A straight length of armoured tail: a sleeve with its windings."""
    wide, high = (12.0, long) if upright else (long, 12.0)
    sheet.rect(x, y, wide, high, round_=4, line=2)
    _windings(sheet, x, y, int(long), upright=upright)


def _windings(sheet: Sheet, x: float, y: float, long: int, *, upright: bool) -> None:
    """The windings of a sleeve, as one stroke."""
    steps = range(8, long - 3, 8)
    one = (f"M{x:g} {y + step + 3:g} l12 -6" if upright else f"M{x + step - 3:g} {y:g} l6 12" for step in steps)
    sheet.path(" ".join(one), line=1)


def parts() -> Drawing:
    """Housing, armoured tail, magnet and bracket, seen from above."""
    sheet = Sheet(
        "wide-reach-parts",
        "Parts of the wide-reach contact",
        "Seen from above: the magnet, long and heavy, faces the housing across the gap. The reed lies along the "
        "marked side of the housing. Two anchors hold the housing, and the armoured tail leaves it at one end.",
        362,
    )
    sheet.rect(92, 66, 110, 30, fill="#3a3a3a", round_=3, line=2)
    sheet.path("M141 96 L147 90 L153 96 Z", fill="#ffffff", line=0)
    for x in (62, 208):
        sheet.rect(x, 66, 24, 30, line=2)
        sheet.rect(x + 6, 76, 12, 9, round_=4, line=1.5)
    sheet.rect(42, 150, 210, 80, round_=10, line=2.5)
    reed_glass(sheet, 147, 172, closed=True, half=58)
    sheet.path("M141 150 L147 158 L153 150 Z", fill=INK, line=0)
    for x in (62, 232):
        screw_hole(sheet, x, 206, r=8)
    armour(sheet, 252, 192, 98)
    for x in (40, 262):
        sheet.line(x, 96, x, 150, line=1, dash="5 4")
    span(sheet, 276, 96, 276, 150)
    sheet.text(286, 128, "gap", size=SMALL)
    sheet.line(262, 96, 282, 96, line=1)
    sheet.line(262, 150, 282, 150, line=1)
    sheet.text(8, 24, "On the moving leaf", bold=True)
    tag(sheet, 74, 48, "slot", (74, 78))
    tag(sheet, 147, 48, "magnet", (147, 72))
    sheet.text(220, 48, "bracket ends", size=SMALL)
    sheet.line(236, 52, 222, 70, line=1)
    tag(sheet, 96, 258, "mark", (143, 156), below=True)
    tag(sheet, 160, 258, "reed", (160, 178), below=True)
    tag(sheet, 226, 258, "anchor", (230, 212), below=True)
    tag(sheet, 306, 258, "armoured tail", (306, 202), below=True)
    tag(sheet, 42, 258, "housing", (52, 224), below=True)
    sheet.text(8, 292, "On the fixed part", bold=True)
    words(sheet, 8, 314, ("Magnet parallel to the housing, its middle", "at the mark, on the marked side."))
    words(sheet, 8, 350, ("Nothing with a cable moves with the leaf.",), bold=True)
    return sheet.finish()


def floor() -> Drawing:
    """The contact at the floor behind a roller door, in section, and where wheels pass."""
    sheet = Sheet(
        "wide-reach-floor",
        "Wide-reach contact at the floor",
        "A cut through a roller door at the floor. The bracket on the bottom rail carries the magnet inwards, above "
        "the housing. The gap is measured face to face with the door shut and locked. The housing is anchored "
        "inside, beside the wheel tracks, and its tail leaves away from the door.",
        430,
    )
    heading(sheet, 22, "Cut through the door, shut and locked")
    sheet.rect(8, 232, 344, 30, fill=FRAME_FILL, line=0)
    sheet.line(8, 232, 352, 232, line=2.5)
    for y in (52, 82, 112):
        sheet.rect(58, y, 12, 30, fill="steel", line=1.5)
    sheet.rect(52, 142, 24, 84, fill="steel", line=2)
    sheet.path("M76 150 L84 150 L84 166 L158 166 L158 174 L76 174 Z", fill=FRAME_FILL, line=1.5)
    sheet.rect(92, 174, 58, 20, fill="#3a3a3a", round_=3, line=2)
    sheet.rect(88, 212, 70, 20, round_=4, line=2)
    sheet.line(96, 217, 150, 217, line=2, dash="6 3")
    for x in (98, 148):
        sheet.line(x, 232, x, 252, line=3)
    armour(sheet, 158, 218, 132)
    sheet.line(150, 194, 196, 194, line=1)
    sheet.line(158, 212, 196, 212, line=1)
    span(sheet, 188, 194, 188, 212)
    sheet.text(202, 208, "gap, face to face", size=SMALL)
    sheet.label(112, 66, "curtain", 64, 76)
    sheet.label(112, 100, "bottom rail, stiff", 66, 148)
    sheet.label(170, 140, "bracket", 140, 170)
    sheet.label(238, 166, "magnet", 146, 184)
    tag(sheet, 128, 284, "housing, reed dashed", (124, 226), below=True)
    tag(sheet, 276, 284, "armoured tail", (262, 226), below=True)
    words(sheet, 8, 52, ("out",))
    sheet.text(352, 52, "inside", size=SMALL, anchor="end")
    _tracks(sheet)
    return sheet.finish()


def _tracks(sheet: Sheet) -> None:
    """The doorway from above: the housing beside the wheel tracks."""
    heading(sheet, 312, "From above: beside the wheel tracks")
    for x in (8, 332):
        sheet.rect(x, 326, 20, 22, fill=FRAME_FILL)
    sheet.rect(28, 334, 304, 6, fill="steel", line=1.5)
    for x in (108, 226):
        sheet.rect(x, 342, 30, 62, fill="none", line=1, dash="5 4")
        sheet.path(" ".join(f"M{x + 4} {y} l22 5" for y in range(348, 400, 12)), line=1)
    sheet.rect(36, 344, 44, 17, round_=3, line=2)
    sheet.rect(40, 333, 36, 8, fill="#3a3a3a", round_=2, line=1)
    sheet.path("M36 352 H20 V392", line=3)
    words(sheet, 182, 366, ("wheels", "pass here"), anchor="middle")
    words(sheet, 30, 384, ("housing",))
    words(sheet, 270, 366, ("wall beside", "the guide:", "the other", "good place"))


def bracket() -> Drawing:
    """The magnet flush on steel and on its bracket, and how the slots set the gap."""
    sheet = Sheet(
        "wide-reach-bracket",
        "Bracket: off the steel, and set by its slots",
        "From above, at the edge of a steel leaf. Left: the magnet lies flush on the steel, which takes much of its "
        "reach. Right: a bracket that is not magnetic holds it clear. Below: bolts with locking washers in slots, so "
        "that the magnet can be slid until the gap fits.",
        446,
    )
    heading(sheet, 22, "Flush on steel")
    sheet.rect(8, 36, 96, 14, fill="steel", line=2)
    sheet.rect(64, 50, 34, 24, fill="#3a3a3a", round_=3, line=2)
    sheet.rect(118, 36, 40, 14, fill="steel", line=2)
    sheet.rect(122, 50, 30, 24, round_=4, line=2)
    sheet.line(146, 54, 146, 70, line=2, dash="4 2")
    for y, reach in ((56, 12), (62, 14), (68, 12)):
        sheet.line(98, y, 98 + reach, y, line=1.5)
    words(sheet, 8, 98, ("Steel takes much", "of the reach."))
    heading(sheet, 22, "On its bracket", x=196)
    sheet.rect(196, 36, 82, 14, fill="steel", line=2)
    sheet.path("M214 50 L222 50 L222 82 L282 82 L282 90 L214 90 Z", fill=FRAME_FILL, line=1.5)
    sheet.rect(244, 90, 34, 24, fill="#3a3a3a", round_=3, line=2)
    sheet.rect(306, 36, 46, 14, fill="steel", line=2)
    sheet.rect(312, 50, 30, 36, fill=FRAME_FILL, line=1.5)
    sheet.rect(312, 88, 30, 26, round_=4, line=2)
    sheet.line(318, 92, 318, 110, line=2, dash="4 2")
    for y, reach in ((96, 30), (102, 32), (108, 30)):
        sheet.line(278, y, 278 + reach, y, line=1.5)
    span(sheet, 204, 52, 204, 112)
    words(sheet, 196, 136, ("Clear of the steel, it has", "most of its reach back."))
    sheet.text(8, 136, "leaf: crossed lines", size=SMALL)
    sheet.text(8, 152, "magnet: black", size=SMALL)
    _slots(sheet)
    return sheet.finish()


def _slots(sheet: Sheet) -> None:
    """The bracket from the front: fixed to the rail above, magnet slid in its slots below."""
    heading(sheet, 194, "Set the gap in the slots")
    sheet.rect(8, 210, 236, 40, fill="steel", line=2)
    sheet.rect(52, 218, 148, 110, fill=FRAME_FILL, line=2)
    for x in (76, 160):
        sheet.circle(x + 8, 234, 9, line=2)
        sheet.circle(x + 8, 234, 4, fill=INK, line=0)
        sheet.rect(x, 262, 16, 52, round_=8, line=1.5)
        sheet.circle(x + 8, 288, 9, line=2)
        sheet.circle(x + 8, 288, 4, fill=INK, line=0)
    sheet.rect(64, 328, 124, 22, fill="#3a3a3a", round_=3, line=2)
    sheet.path("M120 350 L126 344 L132 350 Z", fill="#ffffff", line=0)
    span(sheet, 126, 262, 126, 316)
    sheet.rect(56, 376, 140, 24, round_=5, line=2)
    sheet.path("M120 376 L126 382 L132 376 Z", fill=INK, line=0)
    sheet.line(196, 350, 222, 350, line=1)
    sheet.line(196, 376, 222, 376, line=1)
    span(sheet, 214, 350, 214, 376)
    sheet.text(226, 368, "gap", size=SMALL)
    sheet.label(252, 236, "stiff rail", 236, 230)
    sheet.label(218, 270, "locking washer", 176, 234)
    sheet.label(218, 296, "bolt in its slot", 176, 288)
    sheet.label(218, 342, "magnet", 184, 340)
    sheet.label(218, 398, "housing", 188, 390)
    words(
        sheet, 8, 426, ("Bolts tight with the leaf shut and locked,", "then gap and offset measured again."), bold=True
    )


def tail() -> Drawing:
    """The tail from the housing to its box, with the resistor there, and the cable that goes on."""
    sheet = Sheet(
        "wide-reach-tail",
        "Armoured tail, joint box and resistor",
        "The armoured tail runs from the housing along the floor edge and up the wall, held by clamps, into the "
        "bottom of a joint box above wheels and water. In the box one core is joined to the cable through the "
        "end-of-line resistor and the other straight. The cable leaves downwards too, in a drip loop.",
        440,
    )
    sheet.rect(8, 372, 344, 26, fill=FRAME_FILL, line=0)
    sheet.line(8, 372, 352, 372, line=2.5)
    sheet.rect(18, 350, 88, 22, round_=4, line=2)
    sheet.line(26, 355, 98, 355, line=2, dash="6 3")
    armour(sheet, 106, 358, 60)
    _box(sheet)
    sheet.line(340, 176, 340, 372, line=1)
    sheet.line(268, 176, 346, 176, line=1)
    span(sheet, 340, 176, 340, 372)
    words(sheet, 332, 300, ("above", "wheels", "and water"), anchor="end")
    tag(sheet, 62, 332, "housing", (62, 352))
    words(
        sheet, 8, 420, ("Resistor in the box at the tail, none in the", "cabinet. Both entries point down."), bold=True
    )
    return sheet.finish()


def _box(sheet: Sheet) -> None:
    """The tail up the wall, the box with its joints, and the cable that leaves it in a loop."""
    sheet.path("M164 358 H172 Q186 358 186 344 V198 H198 V344 Q198 370 172 370 H164 Z", line=2)
    _windings(sheet, 186, 204, 144, upright=True)
    for y in (236, 310):
        sheet.rect(178, y, 28, 12, fill="#999999", line=1.5)
    sheet.rect(134, 352, 12, 20, fill="#999999", line=1.5)
    sheet.rect(152, 44, 116, 132, round_=6, line=2.5)
    sheet.rect(180, 174, 24, 24, fill=FRAME_FILL, line=2)
    sheet.rect(222, 174, 24, 24, fill=FRAME_FILL, line=2)
    sheet.path("M188 174 V150 L174 138 V78 H248 V138 L238 150 V174", line=2)
    sheet.path("M196 174 V126 H230 V174", line=2)
    resistor(sheet, 211, 78, long=40)
    for x, y in ((180, 78), (242, 78), (213, 126)):
        dot(sheet, x, y)
    sheet.path("M234 198 V214 Q234 234 258 234 Q296 234 296 206 V22", line=4)
    sheet.label(142, 66, "end-of-line resistor", 196, 74, anchor="end")
    sheet.label(142, 104, "joints", 180, 80, anchor="end")
    sheet.label(142, 152, "joint box", 154, 148, anchor="end")
    sheet.label(142, 190, "entry grips", 180, 188, anchor="end")
    words(sheet, 142, 206, ("the armour",), anchor="end")
    sheet.label(160, 248, "clamp", 178, 242, anchor="end")
    sheet.label(160, 288, "armoured tail", 186, 280, anchor="end")
    sheet.label(286, 26, "cable to the zone", 294, 34, anchor="end")
    sheet.label(268, 264, "drip loop", 262, 236)
