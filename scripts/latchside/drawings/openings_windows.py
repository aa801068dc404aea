"""Drawings of casement, double-hung, tilt-and-turn and roof windows: where magnet and sensor go on each."""

from __future__ import annotations

from latchside.drawings.canvas import FRAME_FILL, INK, Drawing, Sheet
from latchside.drawings.openings_marks import (
    DARK,
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
    pane,
    patch,
    sensor_end,
    sensor_lying,
    sensor_standing,
    side,
    window_leaf,
)


def casement() -> Drawing:
    """The casement window."""
    s = Sheet(
        "opening-casement",
        "Casement window",
        "The sensor stands on the frame and the magnet on the leaf at the latch side, high up and clear "
        "of the handle and its gear. A spacer lifts the magnet level with the sensor where the leaf "
        "lies deeper.",
        height=470,
    )
    _side_hung(s, ("moves", "least"), ("gear of the", "handle"))
    lines(s, 167, 110, "leaf", "opens", "outward", anchor="middle")
    heading(s, 310, "From above, latch side")
    s.path("M236 336 H310 V406 H216 V376 H236 Z", fill=FRAME_FILL, line=2)
    patch(s, 274, 378, "frame")
    block(s, 112, 336, 118, 34, "leaf", moves=True)
    s.line(40, 353, 112, 353, line=4)
    arrow(s, 90, 346, 90, 318)
    s.rect(176, 370, 26, 36, line=1.5)
    magnet(s, 176, 406, 26, 22)
    sensor_end(s, 222, 406, 30, 22, "left")
    _side_words(s, 428, (176, 202, 222))
    name(s, 150, 392, ("spacer",), (189, 388), lead="right")
    name(s, 252, 326, ("gap",), (233, 346))
    lines(s, 322, 330, "out")
    lines(s, 318, 424, "room")
    return s.finish()


def _side_words(s: Sheet, base: float, xs: tuple[float, float, float]) -> None:
    """The words under magnet and sensor in a plan, and the distance between their faces."""
    left, inner, outer = xs
    lines(s, left - 6, base - 7, "magnet", anchor="end")
    lines(s, outer + 36, base - 7, "sensor")
    s.dimension(inner, base + 12, outer, base + 12, "face to face", above=False)


def _side_hung(s: Sheet, hinge: tuple[str, ...], gear: tuple[str, ...]) -> None:
    """A side-hung window from inside: contact high at the latch side, handle and gear below it."""
    heading(s, 20, "Seen from inside")
    frame(s, 92, 32, 150, 206, jamb=18, top=18, sill=18)
    window_leaf(s, 111, 51, 112, 168, rail=20)
    hinges(s, 110, 84, 188)
    sensor_standing(s, 226, 60, 14, 40)
    magnet(s, 208, 62, 12, 36)
    name(s, 254, 52, ("Sensor", "on the frame"), (233, 66))
    name(s, 254, 116, ("Magnet", "on the leaf"), (214, 94))
    side(s, 252, 154, "Latch")
    side(s, 84, 122, "Hinge", *hinge, anchor="end")
    s.line(213, 126, 213, 152, line=5)
    forbid(s, 254, 200, gear, (213, 180))
    forbid(s, 150, 258, ("glass and its bead",), (150, 200), lead="top")


def tilt_and_turn() -> Drawing:
    """The tilt-and-turn window."""
    s = Sheet(
        "opening-tilt-and-turn",
        "Tilt-and-turn window",
        "The contact is on the handle side, in the upper third: tilted, the top of the leaf comes in; "
        "turned, the handle side comes in. That corner moves both ways, and lower down or at the hinges "
        "it does not.",
        height=608,
    )
    _side_hung(s, ("still when", "turned"), ("gear round", "the edge"))
    lines(s, 167, 110, "leaf", "tilts", "and turns", anchor="middle")
    _tilt_and_turn_ways(s)
    heading(s, 456, "From above, handle side")
    block(s, 222, 482, 92, 46, "frame")
    s.path("M86 492 H216 V528 H242 V550 H86 Z", fill="leaf", line=2)
    patch(s, 146, 527, "leaf")
    s.line(20, 510, 86, 510, line=4)
    magnet(s, 214, 550, 26, 22)
    s.rect(262, 528, 30, 22, line=1.5)
    sensor_end(s, 262, 550, 30, 22, "left")
    _side_words(s, 572, (214, 240, 262))
    name(s, 302, 548, ("spacer",), (278, 540))
    name(s, 196, 480, ("gap",), (219, 510), lead="right")
    lines(s, 324, 500, "out")
    lines(s, 20, 560, "room")
    return s.finish()


def _tilt_and_turn_ways(s: Sheet) -> None:
    heading(s, 310, "Tilt: side view")
    block(s, 20, 324, 10, 100)
    block(s, 32, 324, 8, 98, moves=True)
    magnet(s, 40, 334, 8, 16)
    band(s, (32, 422), (0.342, -0.94), (98, 8), dash="5 4")
    arrow(s, 46, 362, 68, 362)
    lines(s, 84, 346, "top third", "comes in")
    lines(s, 66, 416, "bottom stays")
    heading(s, 310, "Turn: from above", 190)
    block(s, 192, 324, 12, 20)
    block(s, 330, 324, 12, 20)
    block(s, 206, 328, 122, 9, moves=True)
    magnet(s, 308, 337, 16, 8)
    band(s, (204, 337), (0.819, 0.574), (120, 9), dash="5 4")
    arrow(s, 324, 350, 312, 386)
    lines(s, 190, 404, "handle side", "comes in")


def double_hung() -> Drawing:
    """The double-hung window."""
    s = Sheet(
        "opening-double-hung",
        "Double-hung window",
        "Both sashes move, so both are watched: the lower sash low at the side stop, the upper sash at the head. "
        "The lower sash passes in front of the upper one, so nothing may stand proud on the upper sash "
        "in its way.",
        height=470,
    )
    _hung_front(s)
    _hung_cut(s)
    return s.finish()


def _hung_front(s: Sheet) -> None:
    heading(s, 20, "Seen from inside")
    frame(s, 16, 36, 126, 304, jamb=16, top=24, sill=22)
    window_leaf(s, 34, 61, 90, 134, rail=14)
    s.rect(34, 181, 90, 137, line=2)
    pane(s, 48, 195, 62, 80)
    s.rect(58, 42, 36, 14, dash="4 3", round_=3)
    s.rect(58, 63, 36, 10, dash="4 3", round_=3)
    magnet(s, 110, 274, 12, 36)
    sensor_standing(s, 127, 272, 14, 40)
    arrow(s, 79, 100, 79, 160)
    arrow(s, 79, 262, 79, 204)
    s.rect(70, 178, 18, 7, fill=INK)
    name(s, 79, 366, ("Do not drill:", "weights and cords", "in the jambs"), (25, 285), lead="top")
    no_drill(s, 25, 285)
    no_drill(s, 133, 150)


def _hung_cut(s: Sheet) -> None:
    heading(s, 20, "Cut from the side", 186)
    block(s, 176, 36, 76, 25)
    block(s, 176, 318, 84, 22)
    for x, y, low in ((190, 63, 14), (214, 181, 36)):
        s.line(x + 10, y, x + 10, y + 134, line=3)
        block(s, x, y, 20, 14, moves=True)
        block(s, x, y + 136 - low, 20, low, moves=True)
    s.rect(234, 272, 22, 42, dash="4 3", round_=4)
    magnet(s, 235, 276, 10, 34)
    s.rect(195, 40, 10, 20, line=1.5)
    magnet(s, 196, 64, 8, 11)
    name(s, 268, 56, ("recessed", "contact"), (204, 50))
    name(s, 268, 104, ("upper sash:", "slides down"), (203, 118))
    name(s, 268, 172, ("lower sash:", "slides up", "in front"), (227, 214))
    name(s, 268, 250, ("magnet on", "the sash"), (240, 284))
    name(s, 268, 310, ("sensor on", "the side stop,", "behind"), (252, 304))
    lines(s, 180, 358, "out")
    lines(s, 222, 358, "room")
    lines(s, 186, 384, "Latch side:", "meeting rails", bold=True)
    lines(s, 186, 416, "no hinge side")
    lines(s, 12, 446, "The lower sash passes the upper one:", "nothing may stand proud in its way.")


def roof_window() -> Drawing:
    """The roof window."""
    s = Sheet(
        "opening-roof-window",
        "Roof window",
        "The lower edge of the leaf swings out furthest, whether it hangs at the top or turns about its "
        "middle, so sensor and magnet meet there. The cable hangs in a loop below the sensor so that "
        "water drips off it.",
        height=582,
    )
    _roof_front(s)
    heading(s, 276, "Cut from the side")
    _roof_slope(s)
    s.path("M86 474 C86 522 54 522 61 484", line=2.5)
    name(s, 104, 518, ("cable loop", "drips here"), (72, 510))
    name(s, 140, 472, ("face to face",), (106, 461))
    name(s, 128, 496, ("sensor",), (98, 474))
    name(s, 150, 440, ("magnet",), (126, 446))
    arrow(s, 110, 428, 70, 396)
    lines(s, 12, 346, "lower edge", "swings out")
    name(s, 120, 316, ("hinge side: top",), (184, 366), lead="bottom")
    s.line(150, 560, 352, 560, line=2.5)
    s.dimension(240, 456, 240, 560, "out of reach:")
    lines(s, 248, 528, "platform work")
    lines(s, 300, 330, "out")
    lines(s, 12, 558, "pivot in middle:", "same lower edge")
    return s.finish()


def _roof_front(s: Sheet) -> None:
    heading(s, 20, "Seen from inside")
    frame(s, 92, 32, 150, 206, jamb=18, top=18, sill=30)
    window_leaf(s, 111, 51, 112, 156, rail=22)
    hinges(s, 140, 51)
    hinges(s, 194, 51)
    magnet(s, 144, 191, 46, 13)
    sensor_lying(s, 144, 212, 46, 18, reed_down=False)
    lines(s, 167, 112, "leaf", "swings", "out", anchor="middle")
    name(s, 254, 180, ("Magnet", "on the leaf"), (184, 197))
    name(s, 254, 222, ("Sensor", "on the frame"), (184, 222))
    side(s, 84, 52, "Hinge", "at the top", anchor="end")
    side(s, 84, 180, "Latch", "lower edge", anchor="end")
    forbid(s, 254, 70, ("seal and", "flashing"), (233, 80))
    forbid(s, 254, 128, ("glass edge",), (204, 124))


def _roof_slope(s: Sheet) -> None:
    """The roof in section, its window shut and, dashed, open, with the contact at the lower edge."""
    ux, uy = 0.766, -0.643

    def at(run: float, deep: float) -> tuple[float, float]:
        return (28 + run * ux - deep * uy, 480 + run * uy + deep * ux)

    for run, length in ((0, 66), (208, 60)):
        band(s, at(run, 0), (ux, uy), (length, 22), fill=FRAME_FILL)
    band(s, at(72, 2), (ux, uy), (132, 18), fill="leaf")
    band(s, at(46, 22), (ux, uy), (20, 18))
    band(s, at(78, 20), (ux, uy), (20, 18), fill=DARK)
    s.circle(*at(60, 31), 2.5, fill=INK, line=0)
    band(s, at(204, 2), (-0.96, 0.28), (132, -18), dash="5 4")
