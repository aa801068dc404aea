"""Drawings of the wired surface contact: side by side on frame and door, under its cover, and on spacers on steel."""

from __future__ import annotations

from latchside.drawings.canvas import FRAME_FILL, INK, SMALL, Drawing, Sheet
from latchside.drawings.parts_surface import MAGNET_FILL
from latchside.drawings.symbols import dot, heading, pinch, reed_glass, resistor, span, tag, terminal, words

SPACER_FILL = "#bdbdbd"


def front() -> Drawing:
    """Body and magnet as the room sees them, with the cable held in trunking."""
    sheet = Sheet(
        "wired-surface-front",
        "Wired surface contact from the front",
        "The body with the reed is on the frame and the strong magnet on the door beside it, parallel to each other, "
        "marks level. The reed lies along the side that faces the magnet. The cable enters at the end away from the "
        "door and is held in trunking or clips up to the body. The gap is measured with the door closed.",
        340,
    )
    sheet.text(136, 24, "frame", anchor="middle", bold=True)
    sheet.text(232, 24, "door", anchor="middle", bold=True)
    sheet.rect(92, 34, 92, 232, fill=FRAME_FILL, line=2)
    sheet.rect(188, 34, 84, 232, fill="leaf", line=2)
    sheet.rect(126, 34, 22, 60, fill="#ffffff", line=1.5)
    sheet.line(137, 34, 137, 104, line=3)
    sheet.sensor(122, 98, 38, 126)
    sheet.magnet(190, 124, 24, 74)
    sheet.line(100, 161, 280, 161, line=1, dash="5 4")
    for x, y in ((160, 226), (190, 200)):
        sheet.line(x, y, x, 294, line=1)
    pinch(sheet, 160, 190, 288)
    sheet.text(175, 312, "gap, door closed", size=SMALL, anchor="middle")
    sheet.label(84, 62, "trunking", 130, 66, anchor="end")
    words(sheet, 84, 78, ("or clips hold", "the cable"), anchor="end")
    sheet.label(84, 128, "body", 130, 122, anchor="end")
    sheet.label(84, 204, "reed", 153, 200, anchor="end")
    words(sheet, 84, 220, ("on the", "magnet side"), anchor="end")
    words(sheet, 284, 156, ("marks", "level"))
    sheet.label(284, 104, "strong", 208, 132)
    words(sheet, 284, 120, ("magnet",))
    sheet.label(284, 212, "parallel", 212, 192)
    words(sheet, 8, 334, ("Nothing with a cable moves with the door.",), bold=True)
    return sheet.finish()


def inside() -> Drawing:
    """The body with its cover off: reed, terminals, resistor, links and cover switch."""
    sheet = Sheet(
        "wired-surface-inside",
        "Under the cover of a wired surface contact",
        "Four terminals: the two in the middle are the reed and the two outside the cover switch. One core of the loop "
        "goes to the reed straight, the other through the end-of-line resistor, which lies under this cover. Below: "
        "a body with built-in resistors, whose links choose the value, in place of a resistor of your own.",
        424,
    )
    heading(sheet, 22, "Resistor of your own, in series")
    sheet.rect(20, 34, 320, 164, round_=8, line=2.5)
    reed_glass(sheet, 180, 66, closed=True, half=64)
    for x in (76, 146, 214, 284):
        terminal(sheet, x, 124, r=10)
    sheet.path("M116 66 H104 V92 H146 V114", line=2)
    sheet.path("M244 66 H256 V92 H214 V114", line=2)
    sheet.path("M146 134 V158 H112 V214", line=2)
    sheet.path("M214 134 V158 H248 V214", line=2)
    resistor(sheet, 112, 178, upright=True, long=36)
    sheet.path("M76 134 V148 H56 V214 M284 134 V148 H304 V214", line=2, dash="6 3")
    sheet.path("M284 114 V84 M284 84 L298 56 M298 52 V44", line=2)
    sheet.path("M76 114 V40 H298 V46", line=1, dash="3 3")
    tag(sheet, 180, 98, "reed", (180, 72), below=True)
    sheet.text(312, 74, "cover", size=SMALL, anchor="middle")
    sheet.text(312, 90, "switch", size=SMALL, anchor="middle")
    sheet.label(132, 184, "resistor", 116, 178)
    tag(sheet, 180, 238, "loop pair", (248, 212), below=True)
    sheet.line(180, 225, 112, 212, line=1)
    dot(sheet, 112, 212)
    tag(sheet, 56, 238, "tamper", (56, 212), below=True)
    tag(sheet, 304, 238, "tamper", (304, 212), below=True)
    _links(sheet)
    return sheet.finish()


def _links(sheet: Sheet) -> None:
    """A row of link positions, one link fitted."""
    heading(sheet, 274, "Resistors built in: links choose them")
    sheet.rect(20, 286, 200, 76, round_=8, line=2.5)
    for index in range(4):
        x = 48 + index * 44
        for y in (308, 338):
            sheet.circle(x, y, 4, fill=INK, line=0)
    sheet.rect(84, 300, 16, 46, round_=6, fill="none", line=2.5)
    sheet.label(234, 304, "link on the pins", 100, 314)
    words(sheet, 234, 320, ("of the value", "asked for: its", "label says which"))
    words(
        sheet, 8, 396,
        ("One way or the other, never both: the meter", "proves it. None in the cabinet."), bold=True,
    )  # fmt: skip


def steel() -> Drawing:
    """Flush on steel, and on spacers, seen along the crack of the door."""
    sheet = Sheet(
        "wired-surface-steel",
        "Off the steel on spacers",
        "Looking along the crack of a steel door in a steel frame. Above: both halves flush on the steel, which takes "
        "a good third of the reach. Below: spacers under both halves lift them off the steel and bring most of it "
        "back. The gap is measured side by side, between the two halves.",
        418,
    )
    heading(sheet, 22, "Flush on steel: reach lost")
    _pair(sheet, 40, off=0)
    heading(sheet, 188, "Spacers under both halves: reach back")
    _pair(sheet, 226, off=26)
    words(
        sheet, 8, 392,
        ("Pads of a stated load, or screws that a magnet", "does not pull, as far as the door allows them."), bold=True,
    )  # fmt: skip
    return sheet.finish()


def _pair(sheet: Sheet, top: float, *, off: float) -> None:
    """Body and magnet side by side over steel, lifted by `off` units."""
    ground = top + 76 + off
    sheet.rect(56, ground, 124, 18, fill="steel", line=2)
    sheet.rect(186, ground, 124, 18, fill="steel", line=2)
    y = ground - off - 44
    for x, width in ((98, 66), (196, 50)):
        if off:
            sheet.rect(x, ground - off, width, off, fill=SPACER_FILL, line=2)
    sheet.rect(98, y, 66, 44, round_=5, line=2)
    sheet.circle(150, y + 22, 7, line=2)
    sheet.circle(150, y + 22, 2.5, fill=INK, line=0)
    sheet.rect(196, y, 50, 44, fill=MAGNET_FILL, round_=3, line=2)
    sheet.line(140, y + 22, 262, y + 22, line=1, dash="5 4")
    for x in (164, 196):
        sheet.line(x, y, x, y - 18, line=1)
    pinch(sheet, 164, 196, y - 12)
    sheet.text(226, y - 8, "gap", size=SMALL)
    if off:
        span(sheet, 320, ground - off, 320, ground)
        sheet.line(248, ground - off, 326, ground - off, line=1)
        words(sheet, 328, ground - off / 2 + 4, ("off",))
        sheet.label(86, ground - 8, "spacers", 104, ground - off / 2, anchor="end")
    sheet.label(86, y + 14, "reed", 145, y + 20, anchor="end")
    sheet.label(268, y + 10, "magnet", 240, y + 16)
    sheet.text(118, ground + 36, "steel frame", size=SMALL, anchor="middle")
    sheet.text(248, ground + 36, "steel door", size=SMALL, anchor="middle")
