"""The JSON Schemas under `schema/`, ready to validate with, and the vocabularies they share."""

from __future__ import annotations

import json
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import Any

from latchside.kinds import KINDS, Kind
from latchside.schemas.shape import Shape, ShapeReader

VOCABULARY = "vocabulary.schema.json"
_BASE = "json-schema:///"  # the address under which the validator resolves a schema's relative references


@dataclass(frozen=True)
class Schemas:
    """All schemas by file name."""

    documents: dict[str, dict[str, Any]] = field(repr=False)

    @cached_property
    def quick(self) -> dict[str, Any]:
        """A fast validator for each kind, by kind id."""
        import jsonschema_rs  # compiled, and where surveys are planned in a page there is none

        registry = jsonschema_rs.Registry([(_BASE + name, text) for name, text in self.documents.items()])
        return {
            kind.id: jsonschema_rs.validator_for(
                {"$ref": _BASE + kind.schema, "$schema": "https://json-schema.org/draft/2020-12/schema"},
                registry=registry,
            )
            for kind in KINDS.values()
        }

    def exact(self, kind: Kind) -> Any:
        """The reference validator of one kind: slower, but its errors say enough to explain."""
        from jsonschema import Draft202012Validator  # slow to import, and only needed where a record is wrong
        from referencing import Registry
        from referencing.jsonschema import DRAFT202012

        registry: Any = Registry()
        for name, document in self.documents.items():
            registry = registry.with_resource(name, DRAFT202012.create_resource(document))
        return Draft202012Validator({"$ref": kind.schema}, registry=registry)

    @cached_property
    def shapes(self) -> dict[str, Shape]:
        """For each kind, where text and references to other records stand in its records."""
        reader = ShapeReader(self.documents)
        return {kind.id: reader.shape(kind.schema) for kind in KINDS.values()}

    def words(self, vocabulary: str) -> dict[str, str]:
        """The words of a vocabulary, each with what a reader sees for it."""
        entry = self.documents[VOCABULARY]["$defs"][vocabulary]
        return dict(entry["x-words"])

    def dimensions(self, vocabulary: str) -> dict[str, str]:
        """The physical dimension of each word of a vocabulary that has one."""
        return dict(self.documents[VOCABULARY]["$defs"][vocabulary]["x-dimension"])

    def layouts(self) -> dict[str, dict[str, str]]:
        """Readings that differ by the layout of resistors: the value of each layout, and which layout it is for."""
        return dict(self.documents[VOCABULARY]["$defs"]["value-name"]["x-layouts"])


def load_schemas(folder: Path) -> Schemas:
    """Read every schema in `folder`.

    Raises OSError or ValueError where the project's own schemas are broken: that is not a record's fault.
    """
    return Schemas({path.name: json.loads(path.read_text("utf-8")) for path in sorted(folder.glob("*.schema.json"))})
