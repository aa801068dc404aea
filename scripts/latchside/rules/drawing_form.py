"""A drawing is plain, told in words, and its parts and labels can be named."""

from __future__ import annotations

import re
from collections.abc import Iterator

from latchside.blanks import is_blank
from latchside.drawings import COMPUTED
from latchside.drawings.plain import ELEMENTS, attributes, box, passed_over, references
from latchside.findings import Finding, quoted
from latchside.library import Library
from latchside.messages import messages
from latchside.read.forms import WORDS, words
from latchside.read.svg import Element, Picture
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "drawing-form"
LEAST_WORDS = 8
"""Words that tell what a drawing shows to whoever does not see it."""
_OF_A_FORM = ("g", "title", "desc")
"""What may belong to some forms of a drawing alone."""
_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*\Z")


def check(library: Library) -> Iterator[Finding]:
    """Every drawing has a title, a description and a view box, only allowed parts, and ids that name one thing each."""
    for picture in library.drawings.values():
        yield from _whole(picture)
        yield from _inside(picture, picture.root)
        yield from _ids(picture)


def _whole(picture: Picture) -> Iterator[Finding]:
    root = picture.root
    if not _ID.match(picture.id) or picture.id in COMPUTED:
        problem = message.finding("name-taken" if picture.id in COMPUTED else "name", name=quoted(picture.id))
        yield picture.finding(CODE, root, *problem)
    told = {element.name: element.words().split() for element in reversed(root.elements)}
    if not told.get("title"):
        yield picture.finding(CODE, root, *message.finding("no-title"))
    if len(told.get("desc", ())) < LEAST_WORDS and not is_blank(" ".join(told.get("desc", ()))):
        problem = message.finding("little-told" if told.get("desc") else "not-told", least=LEAST_WORDS)
        yield picture.finding(CODE, root, *problem)
    if box(root) is None:
        yield picture.finding(CODE, root, *message.finding("no-view-box"))


def _inside(picture: Picture, element: Element) -> Iterator[Finding]:
    """What may not stand in a drawing, from the outermost element in."""
    for value in attributes(element)[1]:
        yield picture.finding(CODE, element, *message.finding("attribute", value=quoted(value), element=element.name))
    unknown = [word for word in words(element) if word not in WORDS]
    if unknown or (words(element) and element.name not in _OF_A_FORM):
        problem = message.finding("form", words=quoted(" ".join(unknown or words(element))), element=element.name)
        yield picture.finding(CODE, element, *problem)
    for one in element.elements:
        if passed_over(one):
            continue
        if one.name in ELEMENTS and one.name != "svg":
            yield from _inside(picture, one)
        else:
            yield picture.finding(CODE, one, *message.finding("element", element=one.name))


def _ids(picture: Picture) -> Iterator[Finding]:
    seen: set[str] = set()
    for one in picture.root.all():
        id_ = one.attributes.get("id")
        if id_ in seen:
            yield picture.finding(CODE, one, *message.finding("id-twice", id=quoted(id_)))
        if id_:
            seen.add(id_)
        elif one.name == "text":
            yield picture.finding(CODE, one, *message.finding("label-without-id", label=quoted(one.words().strip())))
    for one in picture.root.all():
        for id_ in references(attributes(one)[0]):
            if id_ not in seen:
                yield picture.finding(CODE, one, *message.finding("no-such-id", id=id_))


RULE = Rule(CODE, check)
