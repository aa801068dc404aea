"""A drawing is plain, told in words, and its parts and labels can be named."""

from __future__ import annotations

import re
from collections.abc import Iterator

from latchside.drawings import COMPUTED
from latchside.drawings.plain import ELEMENTS, attributes, box, passed_over, references
from latchside.findings import Finding, shown
from latchside.library import Library
from latchside.read.svg import Element, Picture
from latchside.rules.rule import Rule

CODE = "drawing-form"
LEAST_WORDS = 8
"""Words that tell what a drawing shows to whoever does not see it."""
_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*\Z")
_INSTEAD = {
    "image": "Trace it: a page takes lines and shapes, no pixels.", "use": "Unlink the clone, so that it is a shape.",
    "style": "Write colours on the shapes themselves: save as plain SVG, with presentation attributes.",
    "a": "Ungroup it: a drawing holds no links.", "switch": "Ungroup it.",
}  # fmt: skip


def check(library: Library) -> Iterator[Finding]:
    """Every drawing has a title, a description and a view box, only allowed parts, and ids that name one thing each."""
    for picture in library.drawings.values():
        yield from _whole(picture)
        yield from _inside(picture, picture.root)
        yield from _ids(picture)


def _whole(picture: Picture) -> Iterator[Finding]:
    root = picture.root
    if not _ID.match(picture.id) or picture.id in COMPUTED:
        taken = ", which the build draws itself" if picture.id in COMPUTED else ""
        yield picture.finding(
            CODE, root, f"the name {shown(picture.id)}{taken}", "a name of its own: lower-case words and hyphens",
            "Rename the file.",
        )  # fmt: skip
    told = {element.name: element.words().split() for element in reversed(root.elements)}
    if not told.get("title"):
        yield picture.finding(
            CODE, root, "no title", "<title>: what it shows", "Add <title>… as the first line inside."
        )
    if len(told.get("desc", ())) < LEAST_WORDS:
        yield picture.finding(
            CODE, root, "no description" if not told.get("desc") else "a description that says little",
            f"<desc> with {LEAST_WORDS} words or more: what a reader is to see in it", "Write it under the title.",
        )  # fmt: skip
    if box(root) is None:
        yield picture.finding(
            CODE, root, "no view box", 'viewBox="0 0 360 …", the size in units', "Add viewBox to <svg>.",
        )  # fmt: skip


def _inside(picture: Picture, element: Element) -> Iterator[Finding]:
    """What may not stand in a drawing, from the outermost element in."""
    for value in attributes(element)[1]:
        yield picture.finding(
            CODE, element, f"{shown(value)} on <{element.name}>", "what a page can show: DEVELOPERS.md lists it",
            "Remove it.",
        )  # fmt: skip
    for one in element.elements:
        if passed_over(one):
            continue
        if one.name in ELEMENTS and one.name != "svg":
            yield from _inside(picture, one)
        else:
            yield picture.finding(
                CODE, one, f"<{one.name}>", "lines, shapes and text: DEVELOPERS.md lists them",
                _INSTEAD.get(one.name, "Remove it, or turn it into paths."),
            )  # fmt: skip


def _ids(picture: Picture) -> Iterator[Finding]:
    seen: set[str] = set()
    for one in picture.root.all():
        id_ = one.attributes.get("id")
        if id_ in seen:
            yield picture.finding(CODE, one, f"the id {shown(id_)} a second time", "each id once", "Rename one.")
        if id_:
            seen.add(id_)
        elif one.name == "text":
            yield picture.finding(
                CODE, one, f"the label {shown(one.words().strip())} without an id", 'an id, such as id="gap"',
                "Give the text an id that says which label it is.",
            )  # fmt: skip
    for one in picture.root.all():
        for id_ in references(attributes(one)[0]):
            if id_ not in seen:
                yield picture.finding(
                    CODE, one, f"url(#{id_}), which does not exist", "an id of this file", "Correct it."
                )


RULE = Rule(CODE, check)
