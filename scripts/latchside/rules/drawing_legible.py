"""A drawing can be read on a phone, in the sun and on paper."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.drawings.canvas import BAR, INK, LINE, PAPER, THIN
from latchside.drawings.plain import COLOURS, DARK, box
from latchside.drawings.seen import Box, Seen, seen
from latchside.findings import Finding, quoted
from latchside.library import Library
from latchside.messages import messages
from latchside.read.svg import Picture
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "drawing-legible"
COLUMN = 300
"""Width of a drawing, in CSS pixels, where it is narrowest: in a step, on a phone 360 wide. Elsewhere it has 332."""
LEAST = 10.8
"""The smallest text in CSS pixels: 13 units of 360 come to 13 × 300 / 360 = 10.8 in a step, and to 12 elsewhere."""
WEIGHTS = (THIN, LINE, BAR)
"""Weights of lines: of leaders, dimensions and what is imagined; of outlines; of cables and levers."""
_FILLED = ("rect", "circle", "ellipse", "path", "polygon", "polyline")
_DRAWN = (*_FILLED, "line")


def check(library: Library) -> Iterator[Finding]:
    """Text is large enough on a phone and in ink; every other colour and every weight of a line is one of the set."""
    yield from dict.fromkeys(found for picture in library.pictures.values() for found in _in(picture))


def _in(picture: Picture) -> Iterator[Finding]:
    size = box(picture.root)
    under: list[tuple[Box, str]] = []
    for one in seen(picture.root):
        yield from _colours(picture, one)
        yield from _weight(picture, one)
        if size and one.element.name in ("text", "tspan") and _says(one):
            yield from _text(picture, one, size[0])
            yield from _ground(picture, one, under)
        fill = one.look.get("fill", "none")
        if fill != "none" and (covered := one.box()):
            under.append((covered, fill))


def _ground(picture: Picture, one: Seen, under: list[tuple[Box, str]]) -> Iterator[Finding]:
    """What is wrong with the shape on which a text stands, the last that was drawn there."""
    x, y = one.at(one.number("x"), one.number("y") - 4)  # the middle of small letters, not their foot
    fill = next((fill for (x1, y1, x2, y2), fill in reversed(under) if x1 <= x <= x2 and y1 <= y <= y2), PAPER)
    if fill in (*DARK.values(), INK):
        yield picture.finding(CODE, one.element, *message.finding("dark-ground", words=_label(one), ground=fill))


def _label(one: Seen) -> str:
    """The words of a text, quoted, and cut where they are many."""
    return quoted(one.element.words().strip(), 30)


def _says(one: Seen) -> bool:
    """Whether words stand in the element itself."""
    return any(isinstance(text, str) and text.strip() for text in one.element.inside)


def _text(picture: Picture, one: Seen, width: float) -> Iterator[Finding]:
    least = LEAST * width / COLUMN
    if one.size is None:
        yield picture.finding(CODE, one.element, *message.finding("no-size", words=_label(one), least=f"{least:.4g}"))
    elif one.size < least:
        on_phone = one.size * COLUMN / width
        problem = message.finding(
            "too-small",
            words=_label(one),
            size=f"{one.size:.3g}",
            on_phone=f"{on_phone:.3g}",
            least=f"{least:.4g}",
            column=str(COLUMN),
            width=f"{width:g}",
            pixels=str(LEAST),
        )
        yield picture.finding(CODE, one.element, *problem)
    fill = one.look.get("fill")
    if fill != INK:
        problem = message.finding("not-ink" if fill else "no-colour", words=_label(one), colour=fill or "", ink=INK)
        yield picture.finding(CODE, one.element, *problem)


def _colours(picture: Picture, one: Seen) -> Iterator[Finding]:
    if one.element.name not in _DRAWN:
        return
    fill = one.look.get("fill") if one.element.name in _FILLED else "none"
    for way, colour in (("fill", fill), ("stroke", one.look.get("stroke", "none"))):
        if colour is None or (colour not in COLOURS and colour != "none" and "url(#" not in colour):
            problem = message.finding(
                "no-fill" if colour is None else "other-colour",
                way=way,
                colour=quoted(colour),
                element=one.element.name,
                colours=", ".join(f"{colour} ({name})" for colour, name in COLOURS.items()),
            )
            yield picture.finding(CODE, one.element, *problem)


def _weight(picture: Picture, one: Seen) -> Iterator[Finding]:
    """A line of a weight that means something else, or nothing; where none is stated, it is a thin one."""
    stated = one.look.get("stroke-width", str(THIN))
    if one.element.name not in _DRAWN or one.look.get("stroke", "none") == "none":
        return
    if stated not in {f"{weight:g}" for weight in WEIGHTS}:
        weights = dict(zip(("thin", "line", "bar"), (f"{weight:g}" for weight in WEIGHTS), strict=True))
        problem = message.finding("other-weight", weight=quoted(stated), element=one.element.name, **weights)
        yield picture.finding(CODE, one.element, *problem)


RULE = Rule(CODE, check)
