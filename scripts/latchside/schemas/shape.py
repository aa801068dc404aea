"""Where text and references stand in a record, read off its schema.

A property marked `x-text` holds text for the reader; one marked `x-ref` holds the id of another record (or a
list of them). New fields are found by every rule and every link as soon as the schema names them.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, Literal, NamedTuple

Path = tuple[str | int, ...]


class TextAt(NamedTuple):
    """A text of a record: its path, the text, and whether it is `prose` (may hold references) or a bare `line`."""

    path: Path
    text: str
    sort: Literal["prose", "line"]


class ReferenceAt(NamedTuple):
    """A reference of a record: its path, the id it names, and the kind of thing named."""

    path: Path
    id: str
    kind: str


@dataclass
class Shape:
    """What stands where: text or a reference here, and the shapes below."""

    text: Literal["prose", "line"] | None = None
    reference: str | None = None
    properties: dict[str, Shape] = field(default_factory=dict)
    items: Shape | None = None
    others: Shape | None = None

    def texts(self, value: Any) -> list[TextAt]:
        """Every text in `value`."""
        return self.both(value)[0]

    def references(self, value: Any) -> list[ReferenceAt]:
        """Every reference by id in `value`."""
        return self.both(value)[1]

    def both(self, value: Any) -> tuple[list[TextAt], list[ReferenceAt]]:
        """Every text and every reference in `value`, read in one go."""
        found: tuple[list[TextAt], list[ReferenceAt]] = ([], [])
        self._collect(value, (), *found)
        return found

    def _collect(self, value: Any, path: Path, texts: list[TextAt], references: list[ReferenceAt]) -> None:
        if isinstance(value, str):
            if self.text:
                texts.append(TextAt(path, value, self.text))
            if self.reference and value != "none":
                references.append(ReferenceAt(path, value, self.reference))
        elif isinstance(value, dict | MappingProxyType):
            for key, below in value.items():
                shape = self.properties.get(key, self.others)
                if shape:
                    shape._collect(below, (*path, key), texts, references)
        elif isinstance(value, list | tuple) and self.items:
            for index, below in enumerate(value):
                self.items._collect(below, (*path, index), texts, references)


class ShapeReader:
    """Builds shapes from schemas; a `$ref` is built once and shared."""

    def __init__(self, documents: dict[str, dict[str, Any]]) -> None:
        self._documents = documents
        self._known: dict[str, Shape] = {}

    def shape(self, name: str) -> Shape:
        """The shape of a whole schema file."""
        return self._read(self._documents[name], name)

    def _read(self, schema: dict[str, Any], file: str) -> Shape:
        shape = Shape(text=schema.get("x-text"), reference=schema.get("x-ref"))
        if "$ref" in schema:
            _merge(shape, self._target(schema["$ref"], file))
        for branch in (*schema.get("oneOf", ()), *schema.get("anyOf", ())):
            _merge(shape, self._read(branch, file))
        for key, below in schema.get("properties", {}).items():
            shape.properties[key] = self._read(below, file)
        if isinstance(schema.get("additionalProperties"), dict):
            shape.others = self._read(schema["additionalProperties"], file)
        if isinstance(schema.get("items"), dict):
            below = self._read(schema["items"], file)
            shape.items = below
            if shape.reference and not below.reference:
                shape.items = Shape(below.text, shape.reference, below.properties, below.items, below.others)
        return shape

    def _target(self, reference: str, file: str) -> Shape:
        name, _, pointer = reference.partition("#")
        name = name or file
        key = f"{name}#{pointer}"
        if key not in self._known:
            target: Any = self._documents[name]
            for part in pointer.strip("/").split("/"):
                target = target[part] if part else target
            self._known[key] = self._read(target, name)
        return self._known[key]


def _merge(into: Shape, other: Shape) -> None:
    into.text = into.text or other.text
    into.reference = into.reference or other.reference
    into.properties.update(other.properties)
    into.others = into.others or other.others
    if other.items:
        items = Shape(
            other.items.text,
            other.items.reference,
            other.items.properties,
            other.items.items,
            other.items.others,
        )
        items.reference = items.reference or into.reference
        into.items = into.items or items
