"""A drawing that stands as a file: filled in, and written out afresh from the parts that are allowed."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from math import ceil
from xml.etree import ElementTree as ET

from latchside.drawings.canvas import WIDTH, Drawing
from latchside.drawings.plain import ELEMENTS, attributes, box, references
from latchside.read.svg import Element, Picture

Values = tuple[tuple[str, str], ...]
"""The text for each value of a drawing, as (name, text)."""

_BOUND = re.compile(r"\{\{\s*(.*?)\s*\}\}")


def bound(picture: Picture) -> tuple[str, ...]:
    """The names of values that a drawing shows, written in it as `{{fit-gap}}`, each once."""
    return tuple(dict.fromkeys(name for _, name in bound_at(picture)))


def bound_at(picture: Picture) -> Iterator[tuple[Element, str]]:
    """Every place where a drawing shows a value, with the name of the value."""
    for element in picture.root.all():
        for text in element.inside:
            if isinstance(text, str):
                yield from ((element, name) for name in _BOUND.findall(text))


@lru_cache(maxsize=512)  # the same drawing stands on many pages
def finished(picture: Picture, values: Values = ()) -> Drawing:
    """The drawing for a page, its values filled in.

    It is built anew from allowed elements and attributes alone, and every text is written as text. Only ids that
    something in the drawing points at are kept, with the drawing's own id in front, so that several drawings may stand
    in one document.
    """
    words = dict(values)
    title, desc = (_told(picture.root, name, words) for name in ("title", "desc"))
    width, height = box(picture.root) or (WIDTH, WIDTH)
    root = _Writer(picture, words).element(picture.root)
    about = {
        "xmlns": "http://www.w3.org/2000/svg", "viewBox": f"0 0 {WIDTH} {WIDTH}", **root.attrib,
        "width": str(ceil(width)), "height": str(ceil(height)), "font-family": "sans-serif", "role": "img",
        "aria-labelledby": f"{picture.id}-title {picture.id}-message",
    }  # fmt: skip
    root.attrib.clear()
    root.attrib.update(about)
    for place, (tag, id_, text) in enumerate((("title", "title", title), ("desc", "message", desc))):
        told = ET.Element(tag, {"id": f"{picture.id}-{id_}"})
        told.text = text
        root.insert(place, told)
    return Drawing(picture.id, title, desc, ceil(width), ceil(height), ET.tostring(root, encoding="unicode"))


def _told(root: Element, name: str, words: dict[str, str]) -> str:
    """The text of the title or the description of the whole drawing."""
    found = next((one.words() for one in root.elements if one.name == name), "")
    return " ".join(_filled(found, words).split())


def _filled(text: str, words: dict[str, str]) -> str:
    return _BOUND.sub(lambda match: words.get(match[1], match[0]), text)


class _Writer:
    def __init__(self, picture: Picture, words: dict[str, str]) -> None:
        self._id = picture.id
        self._words = words
        self._needed = {id_ for one in picture.root.all() for id_ in references(attributes(one)[0])}

    def element(self, element: Element) -> ET.Element:
        """An allowed element, with what is allowed inside it."""
        kept = dict(attributes(element)[0])
        for name, value in kept.items():
            for id_ in references({name: value}):
                kept[name] = f"url(#{self._id}-{id_})"
        if element.attributes.get("id") in self._needed:
            kept = {"id": f"{self._id}-{element.attributes['id']}", **kept}
        made = ET.Element(element.name, kept)
        holds_text = element.name in ("text", "tspan")
        for one in element.inside:
            if isinstance(one, Element):
                if one.name in ELEMENTS and one.name not in ("svg", "title", "desc"):
                    made.append(self.element(one))
            elif holds_text and (
                "\n" not in one or one.strip()
            ):  # white space between the lines of a label is left out
                self._write(made, one)
        return made

    def _write(self, made: ET.Element, text: str) -> None:
        text = _filled(text, self._words)
        if len(made):
            made[-1].tail = (made[-1].tail or "") + text
        else:
            made.text = (made.text or "") + text
