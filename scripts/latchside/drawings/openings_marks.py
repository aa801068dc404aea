"""Marks that the drawings of openings share: frames, panes, arrows, names, the sign for no drilling."""

from __future__ import annotations

from latchside.drawings.canvas import FRAME_FILL, INK, PAPER, SMALL, Sheet, number

STEP = 16
DARK = "#3a3a3a"


def heading(s: Sheet, y: float, words: str, x: float = 12) -> None:
    """The bold words over one view."""
    s.text(x, y, words, bold=True)


def lines(s: Sheet, x: float, y: float, *words: str, anchor: str = "start", bold: bool = False) -> None:
    """Short lines of text under one another."""
    for row, line in enumerate(words):
        s.text(x, y + row * STEP, line, size=SMALL, anchor=anchor, bold=bold)


def side(s: Sheet, x: float, y: float, which: str, *more: str, anchor: str = "start") -> None:
    """The bold name of a side, such as Latch over side, and what it does there."""
    lines(s, x, y, which, "side", anchor=anchor, bold=True)
    lines(s, x, y + 2 * STEP, *more, anchor=anchor)


def name(s: Sheet, x: float, y: float, words: tuple[str, ...], to: tuple[float, float], *, lead: str = "left") -> None:
    """Lines of words with a leader to the thing named, leaving them at left, right, top or bottom."""
    below = y + (len(words) - 1) * STEP + 4
    start = {"left": (x - 3, y - 4), "right": (x + 3, y - 4), "top": (x, y - 12), "bottom": (x, below)}[lead]
    s.line(*start, *to, line=1)
    s.circle(*to, 2, fill=INK, line=0)
    lines(s, x, y, *words, anchor={"left": "start", "right": "end"}.get(lead, "middle"))


def no_drill(s: Sheet, x: float, y: float, r: float = 9) -> None:
    """The crossed circle: no drilling here."""
    s.circle(x, y, r, line=2.5)
    d = r * 0.7
    s.line(x - d, y - d, x + d, y + d, line=2.5)
    s.line(x - d, y + d, x + d, y - d, line=2.5)


def forbid(
    s: Sheet, x: float, y: float, words: tuple[str, ...], at: tuple[float, float], *, lead: str = "left"
) -> None:
    """A crossed circle at a place and, joined to it, the words Do not drill and what is there."""
    name(s, x, y, ("Do not drill:", *words), at, lead=lead)
    no_drill(s, *at)


def arrow(s: Sheet, x1: float, y1: float, x2: float, y2: float, *, both: bool = False) -> None:
    """A heavy arrow: the way that the moving part goes."""
    length = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
    ux, uy = (x2 - x1) / length, (y2 - y1) / length
    s.line(x1 + (9 * ux if both else 0), y1 + (9 * uy if both else 0), x2 - 9 * ux, y2 - 9 * uy, line=3)
    head(s, x2, y2, ux, uy)
    if both:
        head(s, x1, y1, -ux, -uy)


def head(s: Sheet, x: float, y: float, ux: float, uy: float) -> None:
    """An arrow head with its tip at x, y, pointing along the unit vector ux, uy."""
    bx, by = x - 11 * ux, y - 11 * uy
    left = f"{number(bx - 5 * uy)} {number(by + 5 * ux)}"
    right = f"{number(bx + 5 * uy)} {number(by - 5 * ux)}"
    s.path(f"M{number(x)} {number(y)} L{left} L{right} Z", fill=INK, line=0)


def sensor_lying(s: Sheet, x: float, y: float, w: float, h: float, *, reed_down: bool = True) -> None:
    """The sensor lying down: its reed along the lower or the upper long side."""
    s.rect(x, y, w, h, round_=4, line=2)
    reed = y + h - 5 if reed_down else y + 5
    s.line(x + 6, reed, x + w - 6, reed, line=2, dash="6 3")


def sensor_standing(s: Sheet, x: float, y: float, w: float, h: float, *, reed_right: bool = False) -> None:
    """The sensor standing on a jamb: its reed along the left or the right long side."""
    s.rect(x, y, w, h, round_=4, line=2)
    reed = x + w - 5 if reed_right else x + 5
    s.line(reed, y + 6, reed, y + h - 6, line=2, dash="6 3")


def sensor_end(s: Sheet, x: float, y: float, w: float, h: float, reed: str) -> None:
    """The sensor in section: the reed seen end-on as a dot near the left, right, top or bottom side."""
    s.rect(x, y, w, h, round_=3, line=2)
    cx, cy = x + w / 2, y + h / 2
    at = {"left": (x + 6, cy), "right": (x + w - 6, cy), "top": (cx, y + 6), "bottom": (cx, y + h - 6)}
    s.circle(*at[reed], 2.5, fill=INK, line=0)


def magnet(s: Sheet, x: float, y: float, w: float, h: float) -> None:
    """The magnet at any angle of view: a solid body."""
    s.rect(x, y, w, h, fill=DARK, round_=3, line=2)


def hinges(s: Sheet, x: float, *ys: float) -> None:
    """Hinge knuckles, each with its middle at x and one of ys."""
    for y in ys:
        s.rect(x - 4, y - 10, 8, 20, fill="#999999")


def frame(s: Sheet, x: float, y: float, w: float, h: float, *, jamb: float, top: float, sill: float) -> None:
    """A frame from the front: the outer outline filled and the opening cut out of it."""
    s.rect(x, y, w, h, fill=FRAME_FILL, line=2)
    s.rect(x + jamb, y + top, w - 2 * jamb, h - top - sill, line=1)


def pane(s: Sheet, x: float, y: float, w: float, h: float, *, strokes: bool = True) -> None:
    """A pane of glass with two short strokes."""
    s.rect(x, y, w, h, line=1)
    for shift in (0, 9) if strokes else ():
        s.line(x + 8 + shift, y + 26, x + 22 + shift, y + 10, line=1)


def window_leaf(s: Sheet, x: float, y: float, w: float, h: float, rail: float = 18) -> None:
    """A moving leaf with its pane."""
    s.rect(x, y, w, h, line=2)
    pane(s, x + rail, y + rail, w - 2 * rail, h - 2 * rail)


def block(s: Sheet, x: float, y: float, w: float, h: float, words: str = "", *, moves: bool = False) -> None:
    """A cut block of frame (plain grey) or of leaf (hatched), with its word on a clear patch."""
    s.rect(x, y, w, h, fill="leaf" if moves else FRAME_FILL, line=2)
    if words:
        patch(s, x + w / 2, y + h / 2 + 5, words)


def patch(s: Sheet, x: float, y: float, words: str) -> None:
    """One centred line of text on a clear patch, for hatched ground."""
    half = len(words) * 4.2 + 3
    s.rect(x - half, y - 14, 2 * half, 18, fill=PAPER, line=0)
    s.text(x, y, words, size=SMALL, anchor="middle")


def band(
    s: Sheet,
    start: tuple[float, float],
    along: tuple[float, float],
    size: tuple[float, float],
    *,
    fill: str = PAPER,
    dash: str | None = None,
) -> None:
    """A block at a slant: from `start` along a unit vector; `size` is its length and its thickness."""
    (x, y), (ux, uy), (length, thick) = start, along, size
    corners = [(0, 0), (length, 0), (length, thick), (0, thick)]
    points = " L".join(f"{number(x + a * ux - b * uy)} {number(y + a * uy + b * ux)}" for a, b in corners)
    s.path(f"M{points} Z", fill=fill, line=2, dash=dash)
