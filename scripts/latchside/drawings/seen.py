"""How the elements of a drawing are seen: with the look they take from those around them, and where they end up."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from math import cos, radians, sin

from latchside.drawings.plain import ELEMENTS, NUMBER, attributes
from latchside.read.svg import Element

Matrix = tuple[float, float, float, float, float, float]
Box = tuple[float, float, float, float]
"""Left, top, right and bottom."""

STILL: Matrix = (1, 0, 0, 1, 0, 0)
_TURN = re.compile(r"(\w+)\s*\(([^)]*)\)")
_PIXELS = re.compile(r"(\d+\.?\d*|\.\d+)(px)?\Z")


@dataclass(frozen=True)
class Seen:
    """An element as it is seen: its look, its own and that of those around it, and how it is moved."""

    element: Element
    look: Mapping[str, str] = field(default_factory=dict)
    moved: Matrix = STILL

    @property
    def size(self) -> float | None:
        """Size of its text in units of the drawing; None where it is not stated as a plain number."""
        found = _PIXELS.match(self.look.get("font-size", ""))
        a, b, c, d, _, _ = self.moved
        return float(found[1]) * abs(a * d - b * c) ** 0.5 if found else None

    def number(self, name: str) -> float:
        """A coordinate or a length of the element; zero where it states none."""
        found = NUMBER.match(self.element.attributes.get(name, ""))
        return float(found[0]) if found else 0.0

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Where a point of the element ends up on the sheet."""
        a, b, c, d, e, f = self.moved
        return a * x + c * y + e, b * x + d * y + f

    def box(self) -> Box | None:
        """What a rectangle, circle or ellipse covers on the sheet; None for any other element."""
        if self.element.name == "rect":
            x, y, w, h = (self.number(name) for name in ("x", "y", "width", "height"))
        elif self.element.name in ("circle", "ellipse"):
            rx = self.number("r") or self.number("rx")
            ry = self.number("r") or self.number("ry")
            x, y, w, h = self.number("cx") - rx, self.number("cy") - ry, 2 * rx, 2 * ry
        else:
            return None
        xs, ys = zip(*(self.at(x + right, y + down) for right in (0, w) for down in (0, h)), strict=True)
        return min(xs), min(ys), max(xs), max(ys)


def seen(element: Element, around: Seen | None = None) -> Iterator[Seen]:
    """Every element that goes onto a page, in the order in which they are drawn."""
    if element.name not in ELEMENTS or element.name in ("title", "desc"):
        return
    kept, _ = attributes(element)
    moved = around.moved if around else STILL
    for step in _steps(kept.get("transform", "")):
        moved = _joined(moved, step)
    one = Seen(element, {**(around.look if around else {}), **kept}, moved)
    yield one
    for inside in element.elements:
        yield from seen(inside, one)


def _steps(transform: str) -> Iterator[Matrix]:
    """The moves of a `transform`, from the outermost in."""
    for name, given in _TURN.findall(transform):
        numbers = [float(one) for one in NUMBER.findall(given)]
        if name == "matrix" and len(numbers) == 6:
            a, b, c, d, e, f = numbers
            yield a, b, c, d, e, f
        elif name == "translate" and numbers:
            yield 1, 0, 0, 1, numbers[0], numbers[1] if len(numbers) > 1 else 0
        elif name == "scale" and numbers:
            yield numbers[0], 0, 0, numbers[-1], 0, 0
        elif name == "rotate" and numbers:
            turn = radians(numbers[0])
            x, y = numbers[1:3] if len(numbers) == 3 else (0.0, 0.0)
            yield 1, 0, 0, 1, x, y
            yield cos(turn), sin(turn), -sin(turn), cos(turn), 0, 0
            yield 1, 0, 0, 1, -x, -y


def _joined(outer: Matrix, inner: Matrix) -> Matrix:
    a, b, c, d, e, f = outer
    g, h, i, j, k, l = inner  # noqa: E741  (the letters of the standard's matrix, carried on)
    return a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f
