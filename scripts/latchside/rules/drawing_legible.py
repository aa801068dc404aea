"""A drawing can be read on a phone, in the sun and on paper."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.drawings.canvas import INK, PAPER
from latchside.drawings.plain import COLOURS, DARK, box
from latchside.drawings.seen import Box, Seen, seen
from latchside.findings import Finding, shown
from latchside.library import Library
from latchside.read.svg import Picture
from latchside.rules.rule import Rule

CODE = "drawing-legible"
COLUMN = 300
"""Width of a drawing, in CSS pixels, where it is narrowest: in a step, on a phone 360 wide. Elsewhere it has 332."""
LEAST = 10.8
"""The smallest text in CSS pixels: 13 units of 360 come to 13 × 300 / 360 = 10.8 in a step, and to 12 elsewhere."""
_FILLED = ("rect", "circle", "ellipse", "path", "polygon", "polyline")
_DRAWN = (*_FILLED, "line")


def check(library: Library) -> Iterator[Finding]:
    """Text is large enough on a phone and drawn in ink, and every other colour is one of the set."""
    for picture in library.drawings.values():
        size = box(picture.root)
        under: list[tuple[Box, str]] = []
        for one in seen(picture.root):
            yield from _colours(picture, one)
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
        words = shown(one.element.words().strip(), 30)
        yield picture.finding(
            CODE, one.element, f"{words} on a dark ground, {fill}", "ink on a light one",
            "Put it beside the part, with a line that leads to it.",
        )  # fmt: skip


def _says(one: Seen) -> bool:
    """Whether words stand in the element itself."""
    return any(isinstance(text, str) and text.strip() for text in one.element.inside)


def _text(picture: Picture, one: Seen, width: float) -> Iterator[Finding]:
    words = shown(one.element.words().strip(), 30)
    least = LEAST * width / COLUMN
    if one.size is None:
        yield picture.finding(
            CODE, one.element, f"{words} with no size as a plain number", f"font-size, {least:.4g} or more",
            "Write the size in units of the view box.",
        )  # fmt: skip
    elif one.size < least:
        on_phone = one.size * COLUMN / width
        yield picture.finding(
            CODE, one.element, f"{words} in size {one.size:.3g}: {on_phone:.3g} px on a phone",
            f"{least:.4g} or more: size × {COLUMN} / {width:g} is at least {LEAST} px", "Make the text larger.",
        )  # fmt: skip
    if one.look.get("fill") != INK:
        found = f"{words} in {one.look.get('fill', 'a colour that is not stated')}"
        yield picture.finding(CODE, one.element, found, f'fill="{INK}", as all text', "Give it the colour of ink.")


def _colours(picture: Picture, one: Seen) -> Iterator[Finding]:
    fill = one.look.get("fill", "black, as nothing is stated") if one.element.name in _FILLED else "none"
    for way, colour in (("fill", fill), ("stroke", one.look.get("stroke", "none"))):
        if one.element.name in _DRAWN and colour not in COLOURS and colour != "none" and "url(#" not in colour:
            yield picture.finding(
                CODE, one.element, f"{way} {shown(colour)} on <{one.element.name}>",
                f"one of {', '.join(f'{colour} ({name})' for colour, name in COLOURS.items())}, or none",
                "Take the nearest of them: they are told apart in the sun and in print.",
            )  # fmt: skip


RULE = Rule(CODE, check)
