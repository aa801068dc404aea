"""Drawings of roller doors, up-and-over doors, hatches and gates: where magnet and sensor go on each."""

from __future__ import annotations

from latchside.drawings.canvas import FRAME_FILL, INK, Drawing, Sheet
from latchside.drawings.openings_marks import (
    arrow,
    band,
    block,
    forbid,
    frame,
    heading,
    hinges,
    lines,
    magnet,
    name,
    no_drill,
    patch,
    sensor_end,
    sensor_lying,
    sensor_standing,
    side,
)


def roller_door() -> Drawing:
    """The roller door."""
    s = Sheet(
        "opening-roller-door",
        "Roller door",
        "A wide-gap contact watches the bottom edge: magnet on the bottom rail, sensor on the floor "
        "inside or on the wall beside the guide. The curtain rolls up, so its slats, the guides and the "
        "roll stay free of holes.",
        height=492,
    )
    _roller_front(s)
    heading(s, 318, "Cut at the floor")
    block(s, 12, 446, 152, 18)
    for y in (330, 352, 374):
        s.rect(34, y, 10, 22, fill="steel", line=1.5)
    s.rect(30, 396, 18, 42, fill="steel", line=2)
    s.path("M48 398 H56 V418 H48", fill=FRAME_FILL)
    magnet(s, 56, 396, 24, 16)
    sensor_end(s, 54, 430, 34, 16, "top")
    s.line(88, 440, 164, 440, line=3)
    s.line(80, 412, 100, 412, line=1)
    s.line(88, 430, 100, 430, line=1)
    s.dimension(96, 412, 96, 430, "face to face")
    lines(s, 86, 404, "magnet")
    name(s, 104, 484, ("sensor",), (74, 440))
    name(s, 70, 346, ("curtain",), (39, 352))
    name(s, 70, 376, ("bracket",), (52, 404))
    lines(s, 12, 484, "out")
    heading(s, 318, "Or by the guide", 198)
    _roller_guide(s)
    return s.finish()


def _roller_guide(s: Sheet) -> None:
    block(s, 258, 330, 88, 34, "wall")
    s.path("M264 364 H304 V394 H264 V388 H298 V370 H264 Z", fill="#999999")
    s.rect(192, 375, 102, 8, fill="steel", line=2)
    s.rect(218, 383, 24, 23)
    magnet(s, 218, 406, 24, 20)
    s.path("M308 364 H314 V402 H314 V406 H270 V400 H308 Z", fill=FRAME_FILL)
    sensor_end(s, 270, 406, 30, 20, "left")
    s.dimension(242, 438, 270, 438, "face to face", above=False)
    lines(s, 304, 424, "sensor")
    lines(s, 212, 406, "spacer", anchor="end")


def _roller_front(s: Sheet) -> None:
    heading(s, 20, "Seen from inside")
    frame(s, 12, 34, 222, 204, jamb=16, top=40, sill=0)
    s.rect(24, 42, 198, 30, round_=14, line=2)
    for y in range(74, 210, 17):
        s.rect(32, y, 182, 17, line=1)
    s.rect(32, 210, 182, 18, fill=FRAME_FILL, line=2)
    for x in (24, 214):
        s.rect(x, 74, 8, 164, fill="#999999")
    s.line(4, 238, 244, 238, line=2.5)
    magnet(s, 160, 198, 42, 12)
    sensor_lying(s, 158, 221, 46, 17, reed_down=False)
    arrow(s, 80, 190, 80, 110)
    patch(s, 112, 156, "rolls up")
    forbid(s, 252, 48, ("roll, spring",), (204, 57))
    forbid(s, 252, 100, ("slats, guides",), (180, 108))
    no_drill(s, 218, 106)
    name(s, 252, 168, ("Magnet on", "bottom rail"), (196, 204))
    name(s, 252, 222, ("Sensor on", "the floor"), (196, 230))
    lines(s, 12, 260, "Bottom edge leaves first", bold=True)
    lines(s, 12, 277, "no latch side, no hinge side;", "wide-gap contact, clear of wheels")


def up_and_over() -> Drawing:
    """The up-and-over door."""
    s = Sheet(
        "opening-up-and-over",
        "Up-and-over door",
        "The lower edge swings out first, so sensor and magnet meet low down at the side: the sensor on "
        "the upright, the magnet on the leaf. Springs and arms are under tension and stay untouched.",
        height=478,
    )
    _up_front(s)
    heading(s, 296, "From the side")
    _up_ways(s)
    heading(s, 296, "From above, low", 196)
    lines(s, 182, 316, "steel leaf")
    s.rect(182, 324, 74, 12, fill="steel", line=2)
    block(s, 264, 324, 64, 40)
    lines(s, 296, 349, "upright", anchor="middle")
    s.rect(228, 336, 22, 28)
    magnet(s, 228, 364, 22, 20)
    sensor_end(s, 272, 364, 28, 20, "left")
    s.dimension(250, 396, 272, 396, "face to face", above=False)
    name(s, 278, 316, ("gap",), (260, 332))
    name(s, 222, 356, ("spacer",), (238, 350), lead="right")
    lines(s, 222, 380, "magnet", anchor="end")
    lines(s, 305, 380, "sensor")
    lines(s, 182, 444, "the spacer keeps the", "magnet off the steel")
    return s.finish()


def _up_front(s: Sheet) -> None:
    heading(s, 20, "Seen from inside")
    frame(s, 12, 34, 222, 204, jamb=20, top=24, sill=0)
    s.rect(35, 61, 176, 174, line=2)
    for x in range(57, 200, 22):
        s.line(x, 66, x, 230, line=0.75)
    s.line(4, 238, 244, 238, line=2.5)
    sensor_standing(s, 216, 182, 15, 42)
    magnet(s, 198, 184, 12, 38)
    s.line(222, 76, 222, 150, line=5)
    s.circle(123, 150, 7, fill=INK)
    forbid(s, 252, 60, ("spring, arm",), (222, 92))
    forbid(s, 252, 112, ("lock, rods",), (123, 122))
    name(s, 252, 168, ("Magnet", "on the leaf"), (204, 192))
    name(s, 252, 222, ("Sensor on", "the upright"), (224, 214))
    lines(s, 12, 262, "Latch side: lower edge", bold=True)
    lines(s, 348, 262, "turns on side arms", anchor="end")


def _up_ways(s: Sheet) -> None:
    s.line(12, 466, 170, 466, line=2.5)
    s.rect(84, 316, 14, 12, fill=FRAME_FILL)
    s.rect(86, 330, 9, 134, fill="steel", line=2)
    s.line(98, 326, 170, 326, line=3)
    magnet(s, 95, 438, 9, 20)
    band(s, (30, 425), (0.733, -0.68), (134, 9), dash="5 4")
    arrow(s, 82, 456, 40, 440)
    arrow(s, 136, 338, 166, 338)
    lines(s, 12, 332, "lower", "edge", "kicks out")
    lines(s, 112, 376, "top", "runs in")
    lines(s, 112, 454, "magnet")


def hatch() -> Drawing:
    """The hatch."""
    s = Sheet(
        "opening-hatch",
        "Hatch",
        "The sensor is on the frame and the magnet on the leaf, at the edge across from the hinges, on "
        "the room side. A loose lid has no hinge side and needs a contact at each of two opposite "
        "edges.",
        height=512,
    )
    _hatch_front(s)
    heading(s, 282, "Cut from the side")
    _hatch_cut(s)
    lines(s, 12, 486, "A loose lid has no hinge side:", "contacts at two opposite edges.")
    return s.finish()


def _hatch_front(s: Sheet) -> None:
    heading(s, 20, "Ceiling hatch from below")
    frame(s, 92, 34, 150, 174, jamb=20, top=20, sill=20)
    s.rect(114, 56, 106, 130, line=2)
    hinges(s, 113, 84, 156)
    sensor_standing(s, 224, 62, 15, 42)
    magnet(s, 203, 64, 12, 38)
    s.rect(213, 136, 18, 10, fill=INK)
    lines(s, 160, 116, "leaf", "drops", anchor="middle")
    name(s, 254, 52, ("Sensor", "on the frame"), (231, 70))
    name(s, 254, 114, ("Magnet", "on the leaf"), (209, 96))
    side(s, 252, 154, "Latch")
    side(s, 84, 112, "Hinge", "moves", "least", anchor="end")
    forbid(s, 84, 238, ("cables above",), (102, 196), lead="top")
    forbid(s, 258, 238, ("ladder and spring",), (206, 176), lead="top")


def _hatch_cut(s: Sheet) -> None:
    for x, until in ((12, 54), (214, 346)):
        s.line(x, 346, until, 346, line=3)
    block(s, 30, 304, 24, 40)
    block(s, 214, 304, 24, 40)
    block(s, 58, 328, 148, 16, moves=True)
    magnet(s, 172, 344, 22, 18)
    sensor_end(s, 216, 348, 28, 18, "left")
    s.dimension(194, 378, 216, 378, "face to face", above=False)
    band(s, (66, 346), (0.5, 0.866), (124, 14), dash="5 4")
    arrow(s, 172, 412, 146, 440)
    lines(s, 178, 436, "leaf drops")
    name(s, 190, 310, ("gap",), (210, 334), lead="right")
    name(s, 100, 316, ("leaf",), (118, 336), lead="right")
    name(s, 262, 316, ("frame",), (230, 322))
    lines(s, 250, 366, "sensor")
    lines(s, 166, 364, "magnet", anchor="end")
    lines(s, 318, 316, "loft")
    lines(s, 300, 436, "room")


def gate() -> Drawing:
    """The gate."""
    s = Sheet(
        "opening-gate",
        "Gate",
        "A sealed outdoor contact of wide gap: sensor on the latch post, magnet on the gate, both on "
        "the protected side. The gate sags and swings in the wind, and the gap leaves room for all of "
        "that play.",
        height=448,
    )
    _gate_front(s)
    heading(s, 318, "From above, latch post")
    block(s, 232, 350, 64, 44, "post")
    block(s, 64, 366, 146, 28, "leaf", moves=True)
    for y in (358, 402):
        s.line(64, y, 210, y, line=1, dash="5 4")
    arrow(s, 46, 350, 46, 410, both=True)
    lines(s, 12, 384, "play")
    s.dimension(210, 344, 232, 344, "gap")
    magnet(s, 180, 394, 24, 20)
    sensor_end(s, 240, 394, 30, 20, "left")
    s.dimension(204, 426, 240, 426, "face to face: wide", above=False)
    lines(s, 174, 424, "magnet", anchor="end")
    lines(s, 276, 410, "sensor", "sealed")
    lines(s, 306, 360, "out")
    return s.finish()


def _gate_front(s: Sheet) -> None:
    heading(s, 20, "Seen from inside")
    for x in (46, 214):
        s.rect(x, 44, 17, 196, fill=FRAME_FILL, line=2)
    s.line(8, 240, 346, 240, line=2.5)
    for x in (68, 194):
        s.rect(x, 62, 15, 166, line=2)
    for y in (62, 214):
        s.rect(83, y, 111, 14, line=2)
    s.line(86, 212, 191, 78, line=2)
    hinges(s, 66, 86, 204)
    sensor_standing(s, 215, 70, 15, 42)
    magnet(s, 196, 72, 12, 38)
    s.path("M222 112 C222 152 238 152 238 122", line=2.5)
    s.rect(234, 108, 14, 14)
    s.line(245, 122, 245, 240, line=3)
    s.rect(204, 158, 16, 9, fill=INK)
    lines(s, 90, 98, "sags,", "swings")
    name(s, 256, 50, ("Sensor on", "the post"), (224, 76))
    name(s, 188, 186, ("Magnet on", "the leaf"), (202, 100), lead="right")
    lines(s, 262, 148, "Latch side", bold=True)
    forbid(s, 262, 178, ("latch and lock",), (208, 178))
    name(s, 256, 216, ("cable with", "drip loop"), (230, 143))
    lines(s, 12, 274, "Hinge side", bold=True)
    forbid(s, 112, 262, ("foot of the post,", "buried cables"), (54, 228))
