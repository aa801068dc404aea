"""The fields of a survey as columns: their names, what they hold, and what they are for, read off the schema."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal

from latchside.schemas import Schemas

SCHEMA = "job.schema.json"
ID = "id"
Sort = Literal["text", "number", "length", "answer", "word", "true", "words", "walls", "day"]


@dataclass(frozen=True)
class Column:
    """One field: `site.region` in the rows above the openings, `gap` or `device.class` for each opening."""

    path: tuple[str, ...]
    sort: Sort
    about: str
    required: bool = False
    words: tuple[str, ...] = ()
    unit: str = ""
    whole: bool = False

    @property
    def name(self) -> str:
        """The name of the column."""
        return ".".join(self.path)


@dataclass(frozen=True)
class Columns:
    """The fields above the openings, and those of each opening, by name."""

    above: dict[str, Column]
    opening: dict[str, Column]


def columns(schemas: Schemas) -> Columns:
    """Every column, in the order of the schema."""
    reader = _Reader(schemas)
    document = schemas.documents[SCHEMA]
    above = {one.name: one for one in reader.columns(document, ()) if one.path != ("openings",)}
    opening = {one.name: one for one in reader.columns(document["$defs"]["opening"], ())}
    return Columns(above, opening)


class _Reader:
    def __init__(self, schemas: Schemas) -> None:
        self._documents = schemas.documents

    def columns(self, schema: dict[str, Any], path: tuple[str, ...]) -> Iterator[Column]:
        for key, entry in schema["properties"].items():
            about, length = self._resolved(entry)
            here = (*path, key)
            if about.get("type") == "object":
                yield from self.columns(about, here)
                continue
            yield self._column(here, about, length or here == ("step",), not path and key in schema["required"])

    def _column(self, path: tuple[str, ...], about: dict[str, Any], length: bool, required: bool) -> Column:
        words: tuple[str, ...] = ()
        sort: Sort = "text"
        number = about.get("type") in ("number", "integer") or "oneOf" in about
        if "const" in about:
            sort, words = "true", ("yes",)
        elif about.get("enum") == ["yes", "no", "unknown"]:
            sort, words = "answer", tuple(about["enum"])
        elif "enum" in about:
            sort, words = "word", tuple(about["enum"])
        elif path[-1] == "walls":
            sort, words = "walls", tuple(self._wall_words(about))
        elif about.get("type") == "array":
            sort, words = "words", tuple(self._resolved(about["items"])[0].get("enum", ()))
        elif length:
            sort = "length"
        elif number:
            sort = "number"
            words = tuple(branch["const"] for branch in about.get("oneOf", ()) if "const" in branch)
        elif about.get("pattern", "").startswith("^20[0-9]{2}-"):
            sort = "day"
        whole = about.get("type") == "integer" or "oneOf" in about
        return Column(path, sort, about.get("description", ""), required, words, about.get("x-unit", ""), whole)

    def _wall_words(self, about: dict[str, Any]) -> list[str]:
        wall, _ = self._resolved(about["items"])
        material, _ = self._resolved(wall["properties"]["material"])
        return list(material["enum"])

    def _resolved(self, schema: dict[str, Any]) -> tuple[dict[str, Any], bool]:
        """A part of the schema with its reference followed, and whether it is a length."""
        length = False
        while "$ref" in schema:
            reference = schema["$ref"]
            length = length or reference == "#/$defs/length"
            file, _, pointer = reference.partition("#")
            target: Any = self._documents[file or SCHEMA]
            for part in pointer.strip("/").split("/"):
                target = target[part]
            schema = {**target, **{key: value for key, value in schema.items() if key != "$ref"}}
        return schema, length
