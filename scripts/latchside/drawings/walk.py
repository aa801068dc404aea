"""A façade or a floor as a sketch: its openings in the order of the walk, each with number, device and zone.

The sketch is not to scale: the survey says on which side an opening is, and not where along it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from textwrap import wrap

from latchside.drawings.canvas import BAR, FRAME_FILL, PAPER, SMALL, THIN, Drawing, Sheet
from latchside.messages import listed, messages

message = messages(__name__)
PLACES = 4
"""Openings in a row of the sketch."""
PLACE, HIGH, TOP, LINE = 90, 84, 28, 16
"""Width of an opening's place, height of the wall, where it begins, and from one line of words to the next."""
LETTERS = 12


@dataclass(frozen=True)
class Mark:
    """An opening of the sketch: its number along the walk, its kind, its name, and what stands below it."""

    number: int
    kind: str
    name: str
    device: str
    zones: str


def facade(id_: str, side: str, marks: Sequence[Mark]) -> Drawing:
    """The openings of one side."""
    rows = [marks[start : start + PLACES] for start in range(0, len(marks), PLACES)]
    words = [[_words(mark) for mark in row] for row in rows]
    heights = [HIGH + LINE * max(map(len, row)) + 14 for row in words]
    width = max(PLACE * min(len(marks), PLACES), round(8.5 * len(side)), PLACE + 20) + 2
    names = listed([message("opening", number=str(one.number), name=one.name) for one in marks])
    sheet = Sheet(id_, side, message("about", openings=names), TOP + sum(heights), width)
    sheet.text(1, 18, side, bold=True)
    top = float(TOP)
    for row, lines, height in zip(rows, words, heights, strict=True):
        sheet.rect(1, top, PLACE * len(row), HIGH, fill=FRAME_FILL, line=THIN)
        sheet.line(1, top + HIGH, 1 + PLACE * len(row), top + HIGH, line=BAR)
        for place, (mark, below) in enumerate(zip(row, lines, strict=True)):
            _opening(sheet, mark, 1 + PLACE * (place + 0.5), top)
            for number, text in enumerate(below, 1):
                sheet.text(1 + PLACE * (place + 0.5), top + HIGH + LINE * number, text, size=SMALL, anchor="middle")
        top += height
    return sheet.finish()


def _words(mark: Mark) -> list[str]:
    return [text for part in (mark.zones, mark.device) for text in wrap(part, LETTERS)]


def _opening(sheet: Sheet, mark: Mark, x: float, top: float) -> None:
    """The opening at its usual height, and its number in it."""
    y = _KINDS.get(mark.kind, _door)(sheet, x, top + HIGH)
    sheet.circle(x, y, 13, line=THIN)
    sheet.text(x, y + 5, str(mark.number), anchor="middle", bold=True)


def _door(sheet: Sheet, x: float, ground: float) -> float:
    sheet.rect(x - 18, ground - 64, 36, 64)
    return ground - 34


def _two_doors(sheet: Sheet, x: float, ground: float) -> float:
    sheet.rect(x - 30, ground - 64, 60, 64)
    sheet.line(x, ground - 64, x, ground)
    return ground - 34


def _wide_door(sheet: Sheet, x: float, ground: float) -> float:
    sheet.rect(x - 34, ground - 66, 68, 66)
    for up in (15, 30, 45, 58):
        sheet.line(x - 34, ground - up, x + 34, ground - up, line=THIN)
    return ground - 34


def _gate(sheet: Sheet, x: float, ground: float) -> float:
    sheet.rect(x - 34, ground - 50, 68, 50)
    for across in range(-24, 25, 12):
        sheet.line(x + across, ground - 50, x + across, ground, line=THIN)
    return ground - 26


def _window(sheet: Sheet, x: float, ground: float) -> float:
    sheet.rect(x - 22, ground - 68, 44, 42)
    return ground - 47


def _sashes(sheet: Sheet, x: float, ground: float) -> float:
    sheet.rect(x - 20, ground - 74, 40, 54)
    sheet.line(x - 20, ground - 47, x + 20, ground - 47)
    return ground - 47


def _roof_window(sheet: Sheet, x: float, ground: float) -> float:
    sheet.path(f"M{x - 22:g} {ground - 40:g} l10 -38 l34 0 l-10 38 z", fill=PAPER)
    return ground - 59


def _hatch(sheet: Sheet, x: float, ground: float) -> float:
    sheet.path(f"M{x - 32:g} {ground - 4:g} l16 -30 l48 0 l-16 30 z", fill=PAPER)
    return ground - 19


_KINDS: Mapping[str, Callable[[Sheet, float, float], float]] = {
    "double-door": _two_doors,
    "sliding": _two_doors,
    "lift-and-slide": _two_doors,
    "roller-door": _wide_door,
    "up-and-over": _wide_door,
    "gate": _gate,
    "casement": _window,
    "tilt-and-turn": _window,
    "double-hung": _sashes,
    "roof-window": _roof_window,
    "hatch": _hatch,
}
"""How each kind is drawn; any other as a door. Each says where the middle of its number is."""
