"""A new record to fill in: written from its schema, commented, valid but for the blanks marked FILL IN."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Any

import yaml

from latchside.blanks import BLANK, BLANK_ID
from latchside.kinds import Kind
from latchside.schemas import Schemas


def starter(
    kind: Kind,
    id_: str,
    schemas: Schemas,
    given: Mapping[str, str] = MappingProxyType({}),
    traits: Mapping[str, str] = MappingProxyType({}),
) -> str:
    """The text of a new record of `kind` named `id_`.

    `given` has the values of keys that are known already, `traits` the words for those of a device.
    """
    schema = schemas.documents[kind.schema]
    up = "/".join(".." for _ in kind.folder.split("/"))
    lines = [
        f"# yaml-language-server: $schema={up}/schema/{kind.schema}",
        f"# A new {kind.id}. Replace every {BLANK}; a line that starts with '# key' is optional: delete it or use it.",
        "# Then run: latchside check",
    ]
    for key, about in schema["properties"].items():
        about, file = _resolved(about, kind.schema, schemas)
        lines += ["", *_comment(about.get("description", ""))]
        if key in given:
            lines.append(f"{key}: {given[key]}")
        elif key == "id" and given:
            lines.append(f"id: {id_}")
        elif key == "id":
            lines.append(f"id: {id_}  # FILL IN a reference to it: a record nothing refers to is a finding")
        elif key in schema["required"]:
            lines += _Writer(schemas, traits if key == "traits" else None).entry(key, about, file, 0)
        else:
            lines.append(f"# {key}:")
    return "\n".join(lines) + "\n"


class _Writer:
    """Writes a key with what it may hold: a word of `known`, which leaves others blank, else the first of a list.

    The first word of a list is a fair guess but for a trait, on which all else of a device depends.
    """

    def __init__(self, schemas: Schemas, known: Mapping[str, str] | None) -> None:
        self._schemas = schemas
        self._guesses = known is None
        self._known = known or {}

    def entry(self, key: str, schema: dict[str, Any], file: str, indent: int) -> list[str]:
        """`key: value`, or the key and its value on the lines below."""
        pad = " " * indent
        value = self._known.get(key) or self._short(schema)
        if value is not None:
            return [f"{pad}{key}: {value}"]
        return [f"{pad}{key}:", *self._long(schema, file, indent + 2)]

    def _short(self, schema: dict[str, Any]) -> str | None:
        if "x-starter" in schema:
            return yaml.safe_dump(schema["x-starter"], default_flow_style=True).removesuffix("...\n").strip()
        if "enum" in schema:
            words = schema["enum"]
            first, more = words[0] if self._guesses else BLANK, ", …" if len(words) > 16 else ""
            return f"{first}  # one of: {', '.join(words[:16])}{more}"
        if "const" in schema:
            return json.dumps(schema["const"])
        kind = schema.get("type")
        if kind == "string":
            return BLANK_ID if "pattern" in schema else BLANK
        if kind == "boolean":
            return "false"
        return BLANK if kind in ("number", "integer") else None

    def _long(self, schema: dict[str, Any], file: str, indent: int) -> list[str]:
        pad = " " * indent
        if "oneOf" in schema:
            branches = [_resolved(branch, file, self._schemas) for branch in schema["oneOf"]]
            usual = [pair for pair in branches if "const" not in pair[0]]
            chosen, file = usual[schema.get("x-starter-branch", -1)]
            return self._long(chosen, file, indent)
        if schema.get("type") == "array":
            item, item_file = _resolved(schema["items"], file, self._schemas)
            return list(self._items(item, item_file, schema.get("minItems", 1), indent))
        required = [*schema.get("x-starter-keys", ()), *schema.get("required", ())]
        lines: list[str] = []
        for key in dict.fromkeys(required):
            about = schema.get("properties", {}).get(key) or schema["additionalProperties"]
            below, below_file = _resolved(about, file, self._schemas)
            lines += self.entry(key, below, below_file, indent)
        return lines or [f"{pad}{{}}"]

    def _items(self, item: dict[str, Any], file: str, count: int, indent: int) -> Iterator[str]:
        pad = " " * indent
        for number in range(count):
            short = self._short(item)
            if short is not None:
                yield f"{pad}- {short}"
                continue
            first, *rest = self._long(item, file, indent + 2)
            first = first.replace(f": {BLANK_ID}", f": {BLANK_ID}-{number + 1}" if count > 1 else f": {BLANK_ID}")
            yield f"{pad}- {first.strip()}"
            yield from rest


def _resolved(schema: dict[str, Any], file: str, schemas: Schemas) -> tuple[dict[str, Any], str]:
    """A schema with its reference followed; what stands beside the reference wins."""
    while "$ref" in schema:
        name, _, pointer = schema["$ref"].partition("#")
        file = name or file
        target: Any = schemas.documents[file]
        for part in pointer.strip("/").split("/"):
            target = target[part] if part else target
        schema = {**target, **{key: value for key, value in schema.items() if key != "$ref"}}
    return schema, file


def _comment(text: str) -> Iterator[str]:
    words, line = text.split(), "#"
    for word in words:
        if len(line) + len(word) > 100:
            yield line
            line = "#"
        line += " " + word
    if line != "#":
        yield line
