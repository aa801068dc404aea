"""Drawings of hinged, double, sliding and lift-and-slide doors: where magnet and sensor go on each."""

from __future__ import annotations

from latchside.drawings.canvas import FRAME_FILL, INK, Drawing, Sheet
from latchside.drawings.openings_marks import (
    arrow,
    block,
    forbid,
    frame,
    heading,
    hinges,
    lines,
    magnet,
    name,
    no_drill,
    pane,
    sensor_end,
    sensor_lying,
    sensor_standing,
    side,
)


def head_section(s: Sheet, x: float, y: float) -> None:
    """A cut from above to below through head and leaf at the latch side, the room to the right."""
    block(s, x, y, 64, 48, "head")
    block(s, x + 4, y + 62, 60, 76, "leaf", moves=True)
    sensor_end(s, x + 64, y + 18, 22, 26, "bottom")
    magnet(s, x + 64, y + 68, 22, 22)
    s.line(x + 86, y + 44, x + 98, y + 44, line=1)
    s.line(x + 86, y + 68, x + 98, y + 68, line=1)
    s.dimension(x + 94, y + 44, x + 94, y + 68, "face")
    lines(s, x + 102, y + 76, "to face")
    lines(s, x + 92, y + 32, "sensor")
    lines(s, x + 92, y + 100, "magnet")


def hinged_door() -> Drawing:
    """The hinged single door."""
    s = Sheet(
        "opening-hinged-door",
        "Hinged single door",
        "The sensor lies on the frame head and the magnet on the top edge of the leaf, both at the "
        "latch side, where the leaf moves furthest. The lock, its keep and the hinge side stay free of "
        "holes.",
        height=462,
    )
    _hinged_front(s)
    heading(s, 306, "From above")
    block(s, 14, 320, 16, 26)
    block(s, 132, 320, 16, 26)
    block(s, 32, 324, 98, 14, moves=True)
    magnet(s, 104, 338, 24, 8)
    s.path("M30 338 L105 401 L96 411 L26 347", dash="5 4")
    s.path("M131 348 A100 100 0 0 1 112 398", dash="5 4")
    arrow(s, 120, 381, 109, 403)
    lines(s, 12, 432, "magnet moves", "furthest here")
    s.line(84, 420, 97, 412, line=1)
    lines(s, 76, 364, "room")
    heading(s, 306, "Cut at the head", 186)
    head_section(s, 206, 316)
    name(s, 196, 396, ("gap",), (216, 371), lead="right")
    return s.finish()


def _hinged_front(s: Sheet) -> None:
    heading(s, 20, "Seen from inside")
    frame(s, 92, 32, 150, 242, jamb=14, top=26, sill=0)
    s.rect(109, 61, 116, 213, line=2)
    s.line(20, 274, 340, 274, line=2.5)
    hinges(s, 107, 86, 166, 246)
    s.rect(206, 150, 14, 44, dash="3 2", line=1)
    s.line(200, 158, 216, 158, line=4)
    sensor_lying(s, 174, 38, 46, 18)
    magnet(s, 174, 64, 46, 13)
    name(s, 254, 38, ("Sensor", "on the frame"), (214, 47))
    name(s, 254, 82, ("Magnet", "on the leaf"), (214, 71))
    side(s, 252, 136, "Latch")
    forbid(s, 254, 192, ("lock and keep",), (213, 184))
    side(s, 84, 84, "Hinge", "moves", "least", anchor="end")
    lines(s, 158, 120, "leaf", "moves", anchor="middle")


def double_door() -> Drawing:
    """The double door with a passive leaf."""
    s = Sheet(
        "opening-double-door",
        "Double door with a passive leaf",
        "Each leaf has a contact of its own at the top of its meeting edge, with the sensor on the "
        "frame head. The passive leaf is held by bolts at top and bottom, and moves as soon as they are "
        "drawn.",
        height=472,
    )
    _double_front(s)
    heading(s, 306, "From above")
    block(s, 12, 320, 74, 34, "passive", moves=True)
    block(s, 92, 320, 74, 34, "active", moves=True)
    s.rect(74, 354, 30, 11, fill="leaf", line=2)
    arrow(s, 142, 360, 142, 388)
    lines(s, 12, 384, "active leaf", "goes first")
    lines(s, 12, 428, "no sensor on the", "passive leaf: it", "moves as well")
    heading(s, 306, "Cut at the head", 186)
    head_section(s, 206, 316)
    name(s, 196, 396, ("gap",), (216, 371), lead="right")
    return s.finish()


def _double_front(s: Sheet) -> None:
    heading(s, 20, "Seen from inside")
    frame(s, 20, 32, 320, 222, jamb=14, top=26, sill=0)
    s.line(8, 254, 352, 254, line=2.5)
    hinges(s, 33, 80, 156, 230)
    hinges(s, 327, 80, 156, 230)
    for x, at in ((37, 108), (181, 200)):
        s.rect(x, 61, 142, 193, line=2)
        sensor_lying(s, at, 37, 46, 18)
        magnet(s, at, 64, 46, 13)
    name(s, 264, 20, ("Sensors on the frame",), (226, 46), lead="bottom")
    s.line(264, 24, 148, 44, line=1)
    for y in (44, 226):
        s.rect(168, y, 7, 32, fill=INK)
    lines(s, 100, 98, "passive leaf:", "own contact", anchor="middle")
    lines(s, 260, 98, "active leaf:", "own contact", anchor="middle")
    s.line(186, 150, 204, 150, line=4)
    forbid(s, 220, 180, ("lock",), (193, 176))
    forbid(s, 140, 180, ("both bolts",), (171, 88), lead="right")
    no_drill(s, 171, 216)
    s.line(143, 180, 168, 208, line=1)
    lines(s, 20, 274, "Hinge side", bold=True)
    lines(s, 180, 274, "Latch side", anchor="middle", bold=True)
    lines(s, 340, 274, "Hinge side", anchor="end", bold=True)


def sliding() -> Drawing:
    """The sliding door or window."""
    s = Sheet(
        "opening-sliding",
        "Sliding door or window",
        "The sensor stands on the jamb that the leading edge of the sliding leaf meets, and the magnet "
        "on that edge, so that they part as soon as the leaf slides. A block in the head track stops "
        "the leaf being lifted out.",
        height=466,
    )
    _sliding_front(s, "lock", 178)
    arrow(s, 290, 138, 204, 138)
    lines(s, 247, 158, "slides", anchor="middle")
    heading(s, 316, "From above")
    s.path("M106 330 H166 V396 H106 V378 H120 V346 H106 Z", fill=FRAME_FILL, line=2)
    block(s, 12, 350, 102, 24, "leaf", moves=True)
    name(s, 176, 356, ("gap",), (117, 362))
    s.rect(66, 374, 20, 22, line=1.5)
    magnet(s, 66, 396, 20, 20)
    sensor_end(s, 108, 396, 26, 20, "left")
    s.dimension(86, 426, 108, 426, "face to face", above=False)
    lines(s, 140, 412, "sensor")
    lines(s, 60, 412, "magnet", anchor="end")
    name(s, 56, 390, ("spacer",), (76, 386), lead="right")
    _lift_off(s)
    return s.finish()


def _sliding_front(s: Sheet, hidden: str, hidden_y: float) -> None:
    heading(s, 20, "Seen from inside")
    frame(s, 20, 50, 320, 182, jamb=18, top=18, sill=14)
    s.rect(38, 70, 152, 146, line=2)
    pane(s, 52, 84, 124, 118)
    s.rect(174, 70, 147, 146, line=2)
    pane(s, 192, 84, 108, 118, strokes=False)
    lines(s, 112, 148, "fixed leaf", anchor="middle")
    sensor_standing(s, 324, 90, 15, 42)
    magnet(s, 306, 92, 12, 38)
    name(s, 270, 42, ("Sensor on the jamb",), (331, 96), lead="bottom")
    name(s, 290, 104, ("Magnet on", "the leaf"), (311, 112), lead="right")
    forbid(s, 290, 182, (hidden,), (311, hidden_y), lead="right")
    forbid(s, 64, 262, ("bottom track",), (44, 224))
    lines(s, 340, 256, "Latch side:", "the leading edge", anchor="end", bold=True)
    lines(s, 340, 288, "no hinge side", anchor="end")


def _lift_off(s: Sheet) -> None:
    heading(s, 316, "Cut at the head", 212)
    s.path("M222 330 H290 V374 H276 V346 H236 V374 H222 Z", fill=FRAME_FILL, line=2)
    s.rect(240, 348, 32, 11, fill=INK)
    block(s, 241, 366, 30, 84, moves=True)
    arrow(s, 256, 442, 256, 392)
    name(s, 298, 340, ("block",), (270, 353))
    lines(s, 280, 410, "lift-off", "stopped")


def lift_and_slide() -> Drawing:
    """The lift-and-slide door."""
    s = Sheet(
        "opening-lift-and-slide",
        "Lift-and-slide door",
        "The leaf sinks onto its seals when the handle locks it, and rises onto its rollers before it "
        "slides. Sensor and magnet are level with each other when the leaf is down.",
        height=494,
    )
    _sliding_front(s, "lift gear", 196)
    s.line(311, 142, 311, 174, line=5)
    arrow(s, 262, 144, 200, 144)
    arrow(s, 282, 130, 282, 160, both=True)
    lines(s, 234, 164, "lifts, slides", anchor="middle")
    _lift_state(s, 12, 0, "Leaf down: locked")
    _lift_state(s, 198, 14, "Leaf up: slides")
    lines(s, 12, 468, "level: place the", "contact for this")
    lines(s, 198, 468, "magnet rides high:", "may trip already")
    return s.finish()


def _lift_state(s: Sheet, x: float, up: float, words: str) -> None:
    heading(s, 316, words, x)
    block(s, x + 92, 328, 44, 120)
    block(s, x, 430, 92, 18)
    for roller in (22, 66) if up else ():
        s.circle(x + roller, 423, 7, line=2)
    block(s, x, 328, 88, 102 - up, moves=True)
    sensor_standing(s, x + 98, 350, 18, 46)
    magnet(s, x + 72, 354 - up, 13, 38)
    s.line(x + 58, 373 - up, x + 90, 373 - up, dash="5 3")
    s.line(x + 90, 373, x + 148, 373, dash="5 3")
