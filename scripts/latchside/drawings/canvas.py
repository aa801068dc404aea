"""The one sheet every drawing is made on: plain SVG elements, a few strokes of our own, no styling elsewhere.

A sheet is 360 units wide so that text of 13 units and more is readable on a phone without zooming.
Materials are told apart by pattern and by their written label, never by colour alone. One accent stands for the
magnet, its field and the reed that feels it. Each colour is a role: `inline.py` gives it the colour of the page.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from xml.etree import ElementTree as ET

WIDTH = 360
INK = "#111111"
PAPER = "#ffffff"
FRAME_FILL = "#e3e8e8"
FADED = "#55626a"
ACCENT = "#8e2472"
METAL_FILL = "#a3afb3"
PLASTIC_FILL = "#c8d2d4"
LINE = 1.75
"""Weight of an outline."""
THIN = 1
"""Weight of leaders, dimensions, hatching and what is only imagined."""
BAR = 4
"""Weight of what is a line itself: a cable, a lever."""
SMALL = 13
TEXT = 14
TITLE = 16


@dataclass(frozen=True)
class Drawing:
    """One finished drawing: `title` names it, `message` says in a sentence or two what it shows."""

    id: str
    title: str
    message: str
    width: int
    height: int
    svg: str


def number(value: float) -> str:
    """A coordinate with at most two decimals and no trailing zeros, so that output is stable."""
    return f"{value:.2f}".rstrip("0").rstrip(".") if value % 1 else str(int(value))


@dataclass
class Sheet:
    """A sheet to draw on. Coordinates are in sheet units, x to the right and y down."""

    id: str
    title: str
    message: str
    height: int
    width: int = WIDTH
    root: ET.Element = field(init=False)

    def __post_init__(self) -> None:
        self.root = ET.Element(
            "svg",
            {
                "xmlns": "http://www.w3.org/2000/svg",
                "viewBox": f"0 0 {self.width} {self.height}",
                "width": str(self.width),
                "height": str(self.height),
                "font-family": "sans-serif",
                "role": "img",
                "aria-labelledby": f"{self.id}-title {self.id}-message",
            },
        )
        ET.SubElement(self.root, "title", {"id": f"{self.id}-title"}).text = self.title
        ET.SubElement(self.root, "desc", {"id": f"{self.id}-message"}).text = self.message
        self._pattern("leaf", "M0 8 L8 0")
        self._pattern("steel", "M0 0 L8 8 M0 8 L8 0")

    def _pattern(self, name: str, path: str) -> None:
        defs = ET.SubElement(self.root, "defs")
        pattern = ET.SubElement(
            defs,
            "pattern",
            {"id": f"{self.id}-{name}", "width": "8", "height": "8", "patternUnits": "userSpaceOnUse"},
        )
        ET.SubElement(pattern, "rect", {"width": "8", "height": "8", "fill": PAPER})
        ET.SubElement(pattern, "path", {"d": path, "stroke": FADED, "stroke-width": str(THIN)})

    def _add(self, tag: str, **attributes: float | str | None) -> ET.Element:
        shown = {
            key.rstrip("_").replace("_", "-"): number(value) if isinstance(value, int | float) else value
            for key, value in attributes.items()
            if value is not None
        }
        return ET.SubElement(self.root, tag, shown)

    def rect(
        self,
        x: float,
        y: float,
        w: float,
        h: float,
        *,
        fill: str = PAPER,
        line: float = LINE,
        round_: float = 0,
        dash: str | None = None,
    ) -> None:
        """A rectangle. `fill` may be a colour, `leaf` or `steel` for the two hatchings, or `none`."""
        if fill in ("leaf", "steel"):
            fill = f"url(#{self.id}-{fill})"
        self._add(
            "rect", x=x, y=y, width=w, height=h, rx=round_ or None, fill=fill, stroke=INK,
            stroke_width=line, stroke_dasharray=dash,
        )  # fmt: skip

    def line(
        self,
        x1: float,
        y1: float,
        x2: float,
        y2: float,
        *,
        line: float = LINE,
        dash: str | None = None,
        colour: str = INK,
    ) -> None:
        """A straight line; `dash` such as "5 4" for hidden or imagined edges."""
        self._add("line", x1=x1, y1=y1, x2=x2, y2=y2, stroke=colour, stroke_width=line, stroke_dasharray=dash)

    def path(
        self, d: str, *, fill: str = "none", line: float = LINE, dash: str | None = None, colour: str = INK
    ) -> None:
        """A path in SVG path syntax."""
        if fill in ("leaf", "steel"):
            fill = f"url(#{self.id}-{fill})"
        self._add("path", d=d, fill=fill, stroke=colour, stroke_width=line, stroke_dasharray=dash)

    def circle(
        self, x: float, y: float, r: float, *, fill: str = PAPER, line: float = LINE, dash: str | None = None
    ) -> None:
        """A circle."""
        self._add("circle", cx=x, cy=y, r=r, fill=fill, stroke=INK, stroke_width=line, stroke_dasharray=dash)

    def text(
        self, x: float, y: float, words: str, *, size: float = TEXT, anchor: str = "start", bold: bool = False
    ) -> None:
        """One line of text; `anchor` is start, middle or end. Never smaller than 13 units."""
        element = self._add(
            "text", x=x, y=y, font_size=size, text_anchor=anchor, fill=INK,
            font_weight="700" if bold else None,
        )  # fmt: skip
        element.text = words

    def label(self, x: float, y: float, words: str, to_x: float, to_y: float, *, anchor: str = "start") -> None:
        """Words with a leader line that ends in a dot on the thing named."""
        lead = x + (-3 if anchor == "start" else 3 if anchor == "end" else 0)
        self.line(lead, y - 4, to_x, to_y, line=THIN)
        self.circle(to_x, to_y, 2, fill=INK, line=0)
        self.text(x, y, words, size=SMALL, anchor=anchor)

    def dimension(self, x1: float, y1: float, x2: float, y2: float, words: str, *, above: bool = True) -> None:
        """A dimension: a line with arrow heads at both ends and its words beside it."""
        self.line(x1, y1, x2, y2, line=THIN)
        horizontal = abs(x2 - x1) >= abs(y2 - y1)
        for x, y, way in ((x1, y1, 1), (x2, y2, -1)):
            if horizontal:
                self.path(f"M{number(x)} {number(y)} l{6 * way} -3 l0 6 z", fill=INK, line=0)
            else:
                self.path(f"M{number(x)} {number(y)} l-3 {6 * way} l6 0 z", fill=INK, line=0)
        if horizontal:
            self.text((x1 + x2) / 2, y1 - 6 if above else y1 + 16, words, size=SMALL, anchor="middle")
        else:
            self.text(x1 + 8, (y1 + y2) / 2 + 4, words, size=SMALL)

    def finish(self) -> Drawing:
        """The drawing, ready for a page."""
        svg = ET.tostring(self.root, encoding="unicode")
        return Drawing(self.id, self.title, self.message, self.width, self.height, svg)
