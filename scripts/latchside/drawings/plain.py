"""What a drawing may hold: the elements, the attributes and the colours that go onto a page.

Whatever is not listed here never reaches a page. What drawing programs add for themselves is passed over in silence;
anything else that would be lost is named by the check.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import lru_cache
from types import MappingProxyType

from latchside.drawings.canvas import ACCENT, FADED, FRAME_FILL, INK, METAL_FILL, PAPER, PLASTIC_FILL
from latchside.read.forms import words
from latchside.read.svg import Element

INKS = {"ink": INK}
"""Colours of lines and text."""
HATCHING = {"hatching": FADED}
"""Lines of a hatching, on paper."""
GROUNDS = {"paper": PAPER, "frame": FRAME_FILL, "plastic": PLASTIC_FILL, "metal": METAL_FILL}
"""Fills on which lines and text may stand."""
DARK = {"magnet": ACCENT}
"""Fills on which nothing stands but a mark of the colour of paper; as a line, the reed and the field."""
COLOURS: Mapping[str, str] = {colour: name for name, colour in (INKS | HATCHING | GROUNDS | DARK).items()}

NIGHT: Mapping[str, str] = {
    "ink": "#e7eeee", "paper": "#10171a", "frame": "#212c31", "plastic": "#2f3d43", "metal": "#3e4e55",
    "hatching": "#7b8c93", "magnet": "#e88fc9",
}  # fmt: skip
"""The colour of each role on a dark screen, as in `tokens.css`, for drawings that are files by themselves."""

_BOX = ("x", "y", "width", "height")
ELEMENTS: Mapping[str, tuple[str, ...]] = {
    "svg": ("viewBox",), "title": (), "desc": (), "defs": (), "g": (),
    "pattern": (*_BOX, "patternUnits", "patternTransform"),
    "marker": ("refX", "refY", "markerWidth", "markerHeight", "markerUnits", "orient", "viewBox"),
    "rect": (*_BOX, "rx", "ry"), "line": ("x1", "y1", "x2", "y2"), "path": ("d",),
    "circle": ("cx", "cy", "r"), "ellipse": ("cx", "cy", "rx", "ry"),
    "polyline": ("points",), "polygon": ("points",),
    "text": ("x", "y", "dx", "dy"), "tspan": ("x", "y", "dx", "dy"),
}  # fmt: skip
"""Each element that goes onto a page, with its own attributes."""
_LOOK = {
    "fill", "fill-rule", "stroke", "stroke-width", "stroke-dasharray", "stroke-dashoffset", "stroke-linecap",
    "stroke-linejoin", "stroke-miterlimit", "font-size", "font-weight", "font-style", "text-anchor", "transform",
    "marker-start", "marker-mid", "marker-end",
}  # fmt: skip
_NEUTRAL = {
    "opacity": ("1",), "fill-opacity": ("1",), "stroke-opacity": ("1",), "stop-opacity": ("1",), "display": ("inline",),
    "visibility": ("visible",), "filter": ("none",), "clip-path": ("none",), "mask": ("none",),
    "letter-spacing": ("0", "0px", "normal"), "word-spacing": ("0", "0px", "normal"), "vector-effect": ("none",),
    "text-decoration": ("none",),
}  # fmt: skip
"""What changes nothing while it has one of these values."""
_SILENT = re.compile(
    r"-|aria-|baseProfile\Z|class\Z|clip-rule|color|data-|direction\Z|enable-background\Z|"
    r"font-(family|feature|size-adjust|stretch|variant)|id\Z|image-rendering|inline-size|isolation|line-height|marker\Z|"
    r"mix-blend|overflow|paint-order|preserveAspectRatio\Z|role\Z|shape-|solid-|stop-color\Z|"
    r"text-(align|indent|orientation|rendering)|version\Z|white-space|writing-mode|xml|(width|height|x|y)\Z"
)
"""Names of attributes that programs write for themselves, and that no page needs."""
_REFERENCE = re.compile(r"url\(\s*['\"]?#([\w.:-]+)['\"]?\s*\)\Z")
_NOT_PLAIN = re.compile(r"\\|url\(|[a-z]+script:|expression\(", re.IGNORECASE)
NUMBER = re.compile(r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?")
_NAMED = {"black": "#000000", "white": "#ffffff"}


def passed_over(element: Element) -> bool:
    """Whether an element is a drawing program's own: foreign to SVG, or `metadata`."""
    return element.name.startswith("{") or element.name == "metadata"


@lru_cache(maxsize=16_384)  # the check and the pages ask for the same ones
def attributes(element: Element) -> tuple[Mapping[str, str], tuple[str, ...]]:
    """The attributes of an element that go onto a page, those of its `style` among them, and what is refused."""
    kept: dict[str, str] = {}
    refused: list[str] = []
    own = ELEMENTS.get(element.name, ())
    for name, value in _stated(element):
        reference = _REFERENCE.match(value)
        if name in own or name in _LOOK:
            if not reference and _NOT_PLAIN.search(value):
                refused.append(f"{name}: {value}")
            else:
                kept[name] = f"url(#{reference[1]})" if reference else _colour(value)
        elif (name.startswith("{") and not name.endswith("}href")) or (name == "display" and words(element)):
            continue
        elif value not in _NEUTRAL.get(name, ()) and not _SILENT.match(name):
            refused.append(f"{name.rpartition('}')[2]}: {value}")
    return MappingProxyType(kept), tuple(refused)


def _stated(element: Element) -> Iterator[tuple[str, str]]:
    """Every attribute, and after them what `style` states, which is the stronger."""
    for name, value in element.attributes.items():
        if name != "style":
            yield name, value.strip()
    for part in element.attributes.get("style", "").split(";"):
        name, colon, value = part.partition(":")
        if colon:
            yield name.strip().lower(), value.strip()


def _colour(value: str) -> str:
    """A colour as the palette writes it; any other value as it stands."""
    value = _NAMED.get(value, value)
    if not re.match(r"#([0-9a-fA-F]{3}|[0-9a-fA-F]{6})\Z", value):
        return value
    value = value.lower()
    return value if len(value) == 7 else "#" + "".join(2 * sign for sign in value[1:])


def references(kept: Mapping[str, str]) -> Iterator[str]:
    """The ids that attributes point at, as `fill="url(#steel)"` does."""
    yield from (found[1] for value in kept.values() if (found := _REFERENCE.match(value)))


def box(root: Element) -> tuple[float, float] | None:
    """Width and height of a drawing in its own units; None where it does not state a view box."""
    numbers = [float(one) for one in NUMBER.findall(root.attributes.get("viewBox", ""))]
    return (numbers[2], numbers[3]) if len(numbers) == 4 and min(numbers[2:]) > 0 else None
