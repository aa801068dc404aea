"""Reading the file of a visit. What is wrong with it becomes faults in plain words, never an exception."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from latchside.findings import shown
from latchside.visits.state import Entry

MOST_BYTES = 40_000_000
MOST_FAULTS = 20
_SURROGATE = re.compile("[\ud800-\udfff]")


@dataclass(frozen=True)
class Fault:
    """One thing that is wrong: where in the file, what, and what to do next."""

    where: str
    found: str
    action: str


@dataclass(frozen=True)
class VisitFile:
    """The content of a sound file."""

    visit: str
    saved: str
    library: str
    entries: tuple[Entry, ...]


class _BrokenError(ValueError):
    """The text is JSON by some readers only."""


def read_visit(path: Path, schema: Path) -> tuple[VisitFile | None, tuple[Fault, ...]]:
    """The record in a file, or what is wrong with it; one of the two is empty."""
    try:
        if path.stat().st_size > MOST_BYTES:
            return None, (Fault("the file", "it is larger than any record of a visit", "Choose the saved record."),)
        text = path.read_bytes().decode("utf-8-sig")
    except OSError as error:
        return None, (Fault("the file", f"it cannot be read: {error.strerror}", "Choose another file."),)
    except UnicodeDecodeError:
        return None, (Fault("the file", "it is damaged, or no text in UTF-8", "Save the record again."),)
    return parse_visit(text, schema)


def parse_visit(text: str, schema: Path) -> tuple[VisitFile | None, tuple[Fault, ...]]:
    """The record in a text, or what is wrong with it; one of the two is empty."""
    try:
        data = json.loads(text, object_pairs_hook=_once, parse_constant=_no_constant)
    except (ValueError, RecursionError) as error:
        found = str(error) if isinstance(error, _BrokenError) else "it cannot be read as JSON"
        return None, (Fault("the file", found, "Save the record again; this copy is damaged."),)
    faults = tuple(fault for fault, _ in zip(_faults(data, schema), range(MOST_FAULTS), strict=False))
    if faults:
        return None, faults
    entries = sorted(data["entries"], key=lambda entry: (entry["n"], entry["id"]))
    return VisitFile(data["visit"], data["saved"], data["library"], tuple(entries)), ()


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made = dict(pairs)
    if len(made) != len(pairs):
        raise _BrokenError("a field stands in it twice")
    return made


def _no_constant(word: str) -> None:
    raise _BrokenError(f"it holds {word}, which is no number")


def _faults(data: Any, schema: Path) -> Iterator[Fault]:
    if not isinstance(data, dict) or data.get("format") != "latchside-visit":
        yield Fault("the file", "it is no record of a visit", "Choose a file saved from the page of visits.")
    elif data.get("version") != 1 or data["version"] is True:
        yield Fault("the file", f"it is of version {shown(data.get('version'))}", "Read it with a newer version.")
    elif any(_SURROGATE.search(text) for text in _texts(data)):
        yield Fault("the file", "a text in it holds half a character", "Save the record again.")
    elif not _sound(data, schema):
        yield from _misfits(data, schema)
    else:
        yield from _quarrels(data)


def _texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, below in value.items():
            yield key
            yield from _texts(below)
    elif isinstance(value, list):
        for below in value:
            yield from _texts(below)


@cache
def _schema(path: Path) -> dict[str, Any]:
    return dict(json.loads(path.read_text("utf-8")))


def _sound(data: Any, schema: Path) -> bool:
    import jsonschema_rs

    return bool(jsonschema_rs.is_valid(_schema(schema), data))


def _misfits(data: dict[str, Any], schema: Path) -> Iterator[Fault]:
    """Where the file does not fit its schema, each entry held to the shape of its own kind."""
    from jsonschema import Draft202012Validator  # slow to import, and only wanted where a file is wrong

    document = _schema(schema)
    entries = {**document["properties"]["entries"], "items": True}
    frame = {**document, "properties": {**document["properties"], "entries": entries}}
    yield from _explained(Draft202012Validator(frame), data, "the file")
    kinds = [branch["$ref"].rpartition("/")[2] for branch in document["properties"]["entries"]["items"]["oneOf"]]
    shapes = {kind: Draft202012Validator({"$ref": f"#/$defs/{kind}", "$defs": document["$defs"]}) for kind in kinds}
    for number, entry in enumerate(data["entries"] if isinstance(data.get("entries"), list) else (), 1):
        kind = entry.get("kind") if isinstance(entry, dict) else None
        if isinstance(kind, str) and kind in shapes:
            yield from _explained(shapes[kind], entry, f"entry {number}")
        else:
            known = "Known kinds: " + ", ".join(shapes) + "."
            yield Fault(f"entry {number}", f"it is of the kind {shown(kind)}", known)


def _explained(validator: Any, value: Any, where: str) -> Iterator[Fault]:
    told: set[Fault] = set()
    for error in validator.iter_errors(value):
        way = ".".join(str(part) for part in error.absolute_path)
        about = error.schema.get("description", "") if isinstance(error.schema, dict) else ""
        fault = Fault(f"{where}{f', {way}' if way else ''}", _words(error), about or "See schema/visit.schema.json.")
        if fault not in told:
            told.add(fault)
            yield fault


def _words(error: Any) -> str:
    """What an error of the validator says, without the value at length."""
    rule, wanted, value = error.validator, error.validator_value, error.instance
    if rule == "required":
        return "it has no " + ", ".join(key for key in wanted if key not in value)
    if rule in ("additionalProperties", "unevaluatedProperties"):
        unknown = (shown(key) for key in value if key not in error.schema["properties"])
        return f"it has fields that are not known: {', '.join(unknown)}"
    told = {
        "type": f"{shown(value)} is no {wanted}",
        "enum": f"{shown(value)} is none of {wanted}",
        "const": f"{shown(value)} is not {shown(wanted)}",
        "pattern": f"{shown(value)} has the wrong form",
        "not": "it holds a character that cannot be seen",
        "anyOf": "it does not say what the problem is",
        "oneOf": "it has the wrong form",
        "uniqueItems": "it names one thing twice",
        "dependentRequired": "it is judged without a reading",
    }
    size = len(value) if isinstance(value, str | list | dict) else shown(value)
    return told.get(rule, f"{size} does not keep to {rule} {wanted}")


def _quarrels(data: dict[str, Any]) -> Iterator[Fault]:
    """What a schema cannot say: entries of one visit, each once, with counters that can be true."""
    seen: set[str] = set()
    again = "Save the record again; this copy was altered."
    for number, entry in enumerate(data["entries"], 1):
        if entry["visit"] != data["visit"]:
            yield Fault(f"entry {number}", "it belongs to another visit", again)
        if entry["id"] in seen:
            yield Fault(f"entry {number}", "it has the id of an earlier entry", again)
        if entry["n"] > len(data["entries"]) + 1000:
            yield Fault(f"entry {number}", f"its counter, {entry['n']}, is too high for this record", again)
        seen.add(entry["id"])
