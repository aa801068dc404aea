"""Drawings of the recessed contact: in section, and with its resistor in the hole behind it."""

from __future__ import annotations

from latchside.drawings.canvas import FRAME_FILL, SMALL, Drawing, Sheet
from latchside.drawings.parts_surface import MAGNET_FILL
from latchside.drawings.symbols import dot, pinch, reed_glass, resistor, span, tag, terminal, words


def section() -> Drawing:
    """Both halves in their holes, on one axis, with the gap between."""
    sheet = Sheet(
        "recessed-contact-section",
        "Recessed contact in section",
        "A cut through frame and leaf. The sensor lies in a hole in the frame and the magnet in a hole "
        "in the leaf, both flush and on one axis. Each hole is a little deeper than its part. The cable "
        "leaves through a narrower hole behind the sensor. The gap is measured with the leaf shut.",
        330,
    )
    sheet.rect(10, 96, 168, 116, fill=FRAME_FILL, line=2)
    sheet.rect(192, 96, 158, 116, fill="leaf", line=2)
    sheet.rect(54, 133, 124, 42)
    sheet.rect(10, 148, 44, 12)
    sheet.rect(192, 133, 96, 42)
    for y in (152, 156):
        sheet.line(4, y, 66, y, line=2)
    sheet.rect(66, 136, 112, 36, round_=4, line=2)
    reed_glass(sheet, 122, 154, closed=True, half=46)
    sheet.rect(192, 136, 82, 36, fill=MAGNET_FILL, round_=3, line=2)
    sheet.line(182, 154, 352, 154, line=1, dash="6 3")
    for x in (178, 192):
        sheet.line(x, 96, x, 54, line=1)
    pinch(sheet, 178, 192, 62)
    sheet.text(185, 46, "gap, leaf shut", size=SMALL, anchor="middle")
    sheet.text(94, 26, "frame", anchor="middle", bold=True)
    sheet.text(271, 26, "leaf", anchor="middle", bold=True)
    _section_names(sheet)
    words(sheet, 180, 318, ("Both halves flush, on one axis.",), anchor="middle", bold=True)
    return sheet.finish()


def _section_names(sheet: Sheet) -> None:
    """Hole depths and the names of the parts."""
    for start, end in ((54, 178), (192, 288)):
        sheet.line(start, 175, start, 240, line=1)
        sheet.line(end, 175, end, 240, line=1)
        span(sheet, start, 234, end, 234)
        sheet.text((start + end) / 2, 252, "hole depth", size=SMALL, anchor="middle")
    tag(sheet, 26, 84, "cable", (30, 152))
    tag(sheet, 82, 84, "sensor", (76, 142))
    tag(sheet, 240, 84, "magnet", (232, 137))
    tag(sheet, 142, 84, "reed", (132, 148))
    tag(sheet, 318, 84, "axis", (318, 154))
    tag(sheet, 306, 284, "space behind", (281, 168), below=True)


def with_resistor() -> Drawing:
    """The end-of-line resistor in the hole behind the contact, none in the control unit's cabinet."""
    sheet = Sheet(
        "recessed-contact-resistor",
        "Where the end-of-line resistor sits",
        "The cable pair runs from the control unit's cabinet to the hole in the frame. There one wire "
        "is joined to the resistor and the resistor to one lead of the contact; the other wire is "
        "joined to the other lead. The resistor sits at the contact. There is no resistor in the "
        "cabinet.",
        322,
    )
    sheet.text(54, 26, "control unit", anchor="middle", bold=True)
    sheet.rect(8, 36, 92, 178, round_=6, line=2)
    words(sheet, 54, 68, ("no", "resistor", "in here"), anchor="middle")
    sheet.text(254, 26, "frame, in section", anchor="middle", bold=True)
    sheet.rect(158, 36, 192, 178, fill=FRAME_FILL, line=2)
    sheet.rect(168, 108, 182, 74)
    sheet.rect(156, 139, 14, 12, line=0)
    _joined_leads(sheet)
    tag(sheet, 130, 240, "cable pair", (130, 152), below=True)
    tag(sheet, 226, 240, "joint", (222, 164), below=True)
    tag(sheet, 310, 240, "sensor", (310, 170), below=True)
    sheet.label(218, 86, "resistor", 222, 122)
    words(
        sheet,
        8,
        276,
        ("The end-of-line resistor sits", "at the far contact,", "never in the cabinet."),
        bold=True,
    )
    return sheet.finish()


def _joined_leads(sheet: Sheet) -> None:
    """The pair from its terminals to the leads: one wire through the resistor, the other straight."""
    for y in (138, 152):
        sheet.line(100, y, 176, y, line=2)
        terminal(sheet, 100, y, r=6)
    sheet.line(176, 138, 184, 126, line=2)
    sheet.line(184, 126, 272, 126, line=2)
    sheet.line(176, 152, 184, 164, line=2)
    sheet.line(184, 164, 272, 164, line=2)
    resistor(sheet, 222, 126, long=42)
    for x, y in ((190, 126), (256, 126), (222, 164)):
        dot(sheet, x, y)
    sheet.rect(272, 116, 78, 58, round_=4, line=2)
    reed_glass(sheet, 312, 142, closed=True, half=32)
    sheet.path("M272 126 L280 126 L280 142", line=2)
    sheet.path("M344 142 L344 164 L272 164", line=2)
