"""SVG text to plain elements, each with its place. Nothing here knows what a drawing may hold.

The text is parsed with every entity refused, so nothing is expanded and nothing outside is fetched.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any
from xml.sax import SAXParseException
from xml.sax.handler import ContentHandler, ErrorHandler, feature_namespaces

from defusedxml import DefusedXmlException
from defusedxml.expatreader import create_parser

from latchside.findings import START, Finding, Place
from latchside.messages import messages

message = messages(__name__)
CODE = "broken-svg"
NAMESPACE = "http://www.w3.org/2000/svg"
DEEPEST = 32


@dataclass(frozen=True, eq=False)
class Element:
    """One element, with the text and the elements inside it in the order of the file.

    Names of SVG stand alone; any other name has its namespace in front, as `{namespace}name`.
    """

    name: str
    attributes: Mapping[str, str]
    inside: tuple[Element | str, ...]
    place: Place

    @property
    def elements(self) -> tuple[Element, ...]:
        """The elements inside it, without the text."""
        return tuple(one for one in self.inside if isinstance(one, Element))

    def all(self) -> Iterator[Element]:
        """This element and every one inside it."""
        yield self
        for element in self.elements:
            yield from element.all()

    def words(self) -> str:
        """All text inside it."""
        return "".join(one if isinstance(one, str) else one.words() for one in self.inside)


@dataclass(frozen=True, eq=False)
class Picture:
    """A drawing as read: its file, its id, and its outermost element."""

    file: str
    id: str
    root: Element

    def finding(self, code: str, element: Element, found: str, expected: str, action: str) -> Finding:
        """A finding about an element of this drawing."""
        return Finding(self.file, element.place, code, found, expected, action)


def read_svg(text: str, file: str) -> Element | Finding:
    """The outermost element of `text`, or why there is none; `file` is only its name in the finding."""
    parser: Any = create_parser()
    builder = _Builder(parser)
    parser.setFeature(feature_namespaces, True)
    parser.setContentHandler(builder)
    parser.setErrorHandler(ErrorHandler())
    try:
        parser.feed(text)
        parser.close()
    except SAXParseException as error:
        place = Place(max(error.getLineNumber() or 1, 1), (error.getColumnNumber() or 0) + 1)
        return Finding(file, place, CODE, *message.finding("not-well-formed", why=error.getMessage()))
    except DefusedXmlException:
        return Finding(file, builder.here(), CODE, *message.finding("entity"))
    except _TooDeep:
        return Finding(file, builder.here(), CODE, *message.finding("too-deep", most=DEEPEST))
    root = builder.root
    if root is None:
        return Finding(file, START, CODE, *message.finding("no-element", namespace=NAMESPACE))
    if root.name != "svg":
        other = message.finding("other-element", element=root.name.rpartition("}")[2], namespace=NAMESPACE)
        return Finding(file, root.place, CODE, *other)
    return root


class _TooDeep(Exception):  # noqa: N818  (it is a refusal, not a failure of ours)
    pass


class _Builder(ContentHandler):
    def __init__(self, parser: Any) -> None:
        super().__init__()
        self.root: Element | None = None
        self._parser = parser
        self._open: list[tuple[str, dict[str, str], list[Element | str], Place]] = []

    def here(self) -> Place:
        return Place(max(self._parser.getLineNumber() or 1, 1), (self._parser.getColumnNumber() or 0) + 1)

    def startElementNS(self, name: Any, qname: Any, attrs: Any) -> None:  # noqa: N802  (the name the parser calls)
        if len(self._open) >= DEEPEST:
            raise _TooDeep
        attributes = {_plain(key, ""): value for key, value in attrs.items()}
        self._open.append((_plain(name, NAMESPACE), attributes, [], self.here()))

    def characters(self, content: str) -> None:
        inside = self._open[-1][2]
        last = inside[-1] if inside else None
        if isinstance(last, str):  # a text comes in pieces
            inside[-1] = last + content
        else:
            inside.append(content)

    def endElementNS(self, name: Any, qname: Any) -> None:  # noqa: N802
        named, attributes, inside, place = self._open.pop()
        element = Element(named, MappingProxyType(attributes), tuple(inside), place)
        if self._open:
            self._open[-1][2].append(element)
        else:
            self.root = element


def _plain(name: tuple[str | None, str], home: str) -> str:
    """A name by itself where it is at home, else with its namespace in front."""
    namespace, local = name
    return local if (namespace or "") == home else f"{{{namespace or ''}}}{local}"
