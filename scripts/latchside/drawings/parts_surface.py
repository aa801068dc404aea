"""Drawings of the surface contact: seen from the room, from the side, with its cover off, on a spacer."""

from __future__ import annotations

from latchside.drawings.canvas import FRAME_FILL, INK, SMALL, Drawing, Sheet
from latchside.drawings.symbols import heading, pinch, polygon, screw_hole, span, tag, terminal, words

MAGNET_FILL = "#3a3a3a"


def front() -> Drawing:
    """Sensor and magnet as the room sees them, marks in line, the gap between."""
    sheet = Sheet(
        "surface-contact-front",
        "Surface contact from the front",
        "The sensor is on the frame and the magnet on the leaf beside it. The reed lies along one long "
        "side of the sensor, and that side faces the magnet. The notch marks on both are level with "
        "each other. The gap is measured between the two with the leaf shut.",
        332,
    )
    sheet.text(141, 26, "frame", anchor="middle", bold=True)
    sheet.text(229, 26, "leaf", anchor="middle", bold=True)
    sheet.rect(100, 36, 84, 222, fill=FRAME_FILL, line=2)
    sheet.rect(188, 36, 82, 222, fill="leaf", line=2)
    sheet.sensor(124, 72, 48, 150)
    sheet.magnet(194, 104, 26, 86)
    for y in (114, 180):
        screw_hole(sheet, 209, y, r=4)
    sheet.line(92, 147, 280, 147, line=1, dash="5 4")
    for x in (172, 194):
        sheet.line(x, 224 if x == 172 else 192, x, 286, line=1)
    pinch(sheet, 172, 194, 280)
    sheet.text(183, 304, "gap", size=SMALL, anchor="middle")
    sheet.text(183, 322, "leaf shut", size=SMALL, anchor="middle")
    sheet.label(88, 92, "sensor", 132, 84, anchor="end")
    sheet.label(88, 196, "reed", 165, 196, anchor="end")
    words(sheet, 88, 212, ("on the", "magnet side"), anchor="end")
    words(sheet, 88, 151, ("mark",), anchor="end")
    words(sheet, 284, 151, ("mark", "level with", "the other"))
    sheet.label(284, 118, "screw hole", 211, 113)
    sheet.label(284, 216, "magnet", 220, 178)
    return sheet.finish()


def side() -> Drawing:
    """The same pair seen along the crack: heights, cover, tamper, screws."""
    sheet = Sheet(
        "surface-contact-side",
        "Surface contact from the side",
        "Looking along the crack. Sensor and magnet stand on surfaces that are level with each other. "
        "The reed and the middle of the magnet are at one height. The cover closes the cover tamper, a "
        "plunger between cover and base. A screw holds the base to the frame.",
        330,
    )
    sheet.rect(44, 212, 142, 62, fill=FRAME_FILL, line=2)
    sheet.rect(190, 212, 128, 62, fill="leaf", line=2)
    sheet.text(160, 294, "frame", anchor="middle", bold=True)
    sheet.text(254, 294, "leaf", anchor="middle", bold=True)
    sheet.rect(84, 202, 90, 10, fill="#bdbdbd", line=2)
    sheet.path("M80 202 L80 140 Q80 132 88 132 L170 132 Q178 132 178 140 L178 202", line=2.5)
    _plunger(sheet, 106, 135, 202)
    _screw(sheet, 134, 202)
    sheet.circle(163, 170, 7, line=2)
    sheet.circle(163, 170, 2.5, fill=INK, line=0)
    sheet.rect(204, 146, 44, 66, fill=MAGNET_FILL, round_=3, line=2)
    sheet.line(150, 170, 262, 170, line=1, dash="5 4")
    for x in (178, 204):
        sheet.line(x, 128 if x == 178 else 142, x, 92, line=1)
    pinch(sheet, 178, 204, 98)
    sheet.text(191, 84, "gap", size=SMALL, anchor="middle")
    _heights(sheet)
    tag(sheet, 40, 60, "cover", (90, 134))
    tag(sheet, 106, 36, "cover tamper", (106, 148))
    tag(sheet, 40, 318, "base", (90, 207), below=True)
    tag(sheet, 104, 318, "screw", (134, 244), below=True)
    sheet.label(290, 100, "reed", 166, 167)
    sheet.label(290, 134, "magnet", 248, 156)
    return sheet.finish()


def _heights(sheet: Sheet) -> None:
    """The heights of sensor and magnet above the surface."""
    span(sheet, 62, 132, 62, 212)
    sheet.line(56, 132, 76, 132, line=1)
    words(sheet, 54, 168, ("sensor", "height"), anchor="end")
    span(sheet, 272, 146, 272, 212)
    sheet.line(252, 146, 278, 146, line=1)
    words(sheet, 282, 182, ("magnet", "height"))


def _plunger(sheet: Sheet, x: float, top: float, bottom: float) -> None:
    """A tamper plunger: a pin held down by the cover onto a small switch."""
    sheet.rect(x - 3, top, 6, bottom - top - 18, line=1.5)
    sheet.rect(x - 11, bottom - 20, 22, 20, line=1.5)


def _screw(sheet: Sheet, x: float, y: float) -> None:
    """A countersunk screw going down from y."""
    right = ((8.0, 0.0), (3.0, 7.0), (3.0, 40.0), (0.0, 46.0))
    outline = [(x + dx, y + dy) for dx, dy in right] + [(x - dx, y + dy) for dx, dy in reversed(right[:3])]
    polygon(sheet, outline, fill="#8a8a8a")


def terminals() -> Drawing:
    """The sensor with its cover off."""
    sheet = Sheet(
        "surface-contact-terminals",
        "Surface contact, cover off",
        "Inside the sensor: the cell with its plus sign, the reed along the side that faces the magnet, "
        "the cover tamper, two terminals for a wired contact elsewhere, the cable entry, and two screw "
        "holes in the base. Reed and terminals are inputs of their own, or have one identity.",
        428,
    )
    sheet.rect(112, 24, 136, 340, round_=10, line=2.5)
    screw_hole(sheet, 136, 48, r=7)
    screw_hole(sheet, 136, 338, r=7)
    sheet.rect(150, 86, 44, 116, round_=4)
    sheet.rect(156, 98, 32, 98, round_=3, line=2)
    sheet.rect(164, 91, 16, 7, fill=INK, line=0)
    sheet.text(172, 118, "+", size=16, anchor="middle", bold=True)
    sheet.text(172, 189, "−", size=16, anchor="middle", bold=True)
    sheet.rect(220, 112, 16, 132, round_=8)
    sheet.line(228, 104, 228, 172, line=2)
    sheet.line(231, 166, 231, 252, line=2)
    sheet.path("M248 173 L241 178 L248 183 Z", fill=INK, line=0)
    sheet.rect(206, 44, 26, 26, line=1.5)
    sheet.circle(219, 57, 8, line=2)
    sheet.rect(146, 274, 64, 36, line=2)
    terminal(sheet, 162, 292, r=9)
    terminal(sheet, 194, 292, r=9)
    sheet.path("M178 364 a16 16 0 0 1 32 0", dash="4 3", line=1.5)
    _terminal_names(sheet)
    words(sheet, 180, 400, ("Two inputs, or one identity:", "the document says which."), anchor="middle", bold=True)
    return sheet.finish()


def _terminal_names(sheet: Sheet) -> None:
    """The names beside the open sensor."""
    sheet.label(98, 52, "screw hole", 132, 48, anchor="end")
    sheet.label(98, 342, "screw hole", 132, 338, anchor="end")
    sheet.text(172, 81, "+", size=16, anchor="middle", bold=True)
    sheet.label(98, 104, "+ of holder", 160, 78, anchor="end")
    sheet.label(98, 154, "cell", 160, 150, anchor="end")
    sheet.label(98, 296, "terminals", 149, 300, anchor="end")
    sheet.label(262, 52, "cover", 222, 57)
    sheet.text(262, 68, "tamper", size=SMALL)
    sheet.label(262, 132, "reed", 232, 128)
    sheet.label(262, 182, "mark, the", 245, 178)
    words(sheet, 262, 198, ("magnet side",))
    sheet.label(262, 326, "cable", 200, 354)
    sheet.text(262, 342, "entry", size=SMALL)


def _step(sheet: Sheet, y: float, *, lifted: bool) -> None:
    """Sensor and magnet on a leaf that lies back from the frame, with or without a spacer."""
    top = y + 76
    leaf = top + 34
    sheet.rect(20, top, 158, 66, fill=FRAME_FILL, line=2)
    sheet.rect(182, leaf, 158, 32, fill="leaf", line=2)
    sheet.rect(92, y + 14, 80, 62, round_=5, line=2)
    sheet.circle(158, y + 46, 7, line=2)
    sheet.circle(158, y + 46, 2.5, fill=INK, line=0)
    middle = y + 46 if lifted else y + 80
    if lifted:
        sheet.rect(194, leaf - 34, 56, 34, fill="#bdbdbd", line=2)
    sheet.rect(200, middle - 30, 44, 60, fill=MAGNET_FILL, round_=3, line=2)
    sheet.circle(222, middle, 3, fill="#ffffff", line=0)
    sheet.line(130, y + 46, 270, y + 46, line=1, dash="5 4")
    if not lifted:
        sheet.line(190, middle, 270, middle, line=1, dash="5 4")
    sheet.label(78, y + 32, "sensor", 100, y + 28, anchor="end")
    sheet.label(78, y + 60, "reed", 152, y + 48, anchor="end")


def spacer() -> Drawing:
    """A magnet too low on a leaf set back from the frame, and lifted into line."""
    sheet = Sheet(
        "surface-contact-spacer",
        "Spacer under the magnet",
        "The leaf lies back from the frame. Without a spacer the magnet sits lower than the reed, out "
        "of line. A spacer under the magnet lifts it until its middle is level with the reed.",
        408,
    )
    heading(sheet, 24, "No spacer: magnet out of line")
    _step(sheet, 30, lifted=False)
    sheet.label(278, 58, "magnet", 243, 92)
    words(sheet, 278, 102, ("out of line",))
    sheet.text(99, 192, "frame", anchor="middle", size=SMALL)
    sheet.text(261, 192, "leaf, set back", anchor="middle", size=SMALL)
    heading(sheet, 230, "Spacer: magnet in line")
    _step(sheet, 236, lifted=True)
    sheet.label(278, 264, "magnet", 244, 268)
    words(sheet, 278, 287, ("in line",))
    sheet.label(278, 318, "spacer", 242, 328)
    sheet.text(99, 398, "frame", anchor="middle", size=SMALL)
    sheet.text(261, 398, "leaf, set back", anchor="middle", size=SMALL)
    return sheet.finish()
