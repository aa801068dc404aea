"""Reading the file of a visit. What is wrong with it becomes faults in plain words, never an exception."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from latchside.findings import quoted
from latchside.messages import Message, messages
from latchside.visits.state import Entry

message = messages(__name__)
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

    def __init__(self, fault: Fault) -> None:
        super().__init__(fault.found)
        self.fault = fault


def read_visit(path: Path, schema: Path) -> tuple[VisitFile | None, tuple[Fault, ...]]:
    """The record in a file, or what is wrong with it; one of the two is empty."""
    try:
        if path.stat().st_size > MOST_BYTES:
            return None, (_fault("too-large"),)
        text = path.read_bytes().decode("utf-8-sig")
    except OSError as error:
        return None, (_fault("cannot-read", why=str(error.strerror)),)
    except UnicodeDecodeError:
        return None, (_fault("not-utf-8"),)
    return parse_visit(text, schema)


def parse_visit(text: str, schema: Path) -> tuple[VisitFile | None, tuple[Fault, ...]]:
    """The record in a text, or what is wrong with it; one of the two is empty."""
    try:
        data = json.loads(text, object_pairs_hook=_once, parse_constant=_no_constant)
    except (ValueError, RecursionError) as error:
        return None, (error.fault if isinstance(error, _BrokenError) else _fault("not-json"),)
    faults = tuple(fault for fault, _ in zip(_faults(data, schema), range(MOST_FAULTS), strict=False))
    if faults:
        return None, faults
    entries = sorted(data["entries"], key=lambda entry: (entry["n"], entry["id"]))
    return VisitFile(data["visit"], data["saved"], data["library"], tuple(entries)), ()


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made = dict(pairs)
    if len(made) != len(pairs):
        raise _BrokenError(_fault("field-twice"))
    return made


def _no_constant(word: str) -> None:
    raise _BrokenError(_fault("no-number", word=word))


def _faults(data: Any, schema: Path) -> Iterator[Fault]:
    if not isinstance(data, dict) or data.get("format") != "latchside-visit":
        yield _fault("no-record")
    elif data.get("version") != 1 or data["version"] is True:
        yield _fault("other-version", version=quoted(data.get("version")))
    elif any(_SURROGATE.search(text) for text in _texts(data)):
        yield _fault("half-a-character")
    elif not _sound(data, schema):
        yield from _misfits(data, schema)
    else:
        yield from _contradictions(data)


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
    from jsonschema import Draft202012Validator  # slow to import, and only needed where a file is wrong

    document = _schema(schema)
    entries = {**document["properties"]["entries"], "items": True}
    frame = {**document, "properties": {**document["properties"], "entries": entries}}
    yield from _explained(Draft202012Validator(frame), data)
    kinds = [branch["$ref"].rpartition("/")[2] for branch in document["properties"]["entries"]["items"]["oneOf"]]
    shapes = {kind: Draft202012Validator({"$ref": f"#/$defs/{kind}", "$defs": document["$defs"]}) for kind in kinds}
    for number, entry in enumerate(data["entries"] if isinstance(data.get("entries"), list) else (), 1):
        kind = entry.get("kind") if isinstance(entry, dict) else None
        if isinstance(kind, str) and kind in shapes:
            yield from _explained(shapes[kind], entry, number)
        else:
            yield _fault("unknown-kind", number, kind=quoted(kind), known=", ".join(shapes))


def _explained(validator: Any, value: Any, entry: int | None = None) -> Iterator[Fault]:
    """The faults of the whole file, or of one entry by its number; what is said twice is said once."""
    told: set[Fault] = set()
    for error in validator.iter_errors(value):
        about = error.schema.get("description", "") if isinstance(error.schema, dict) else ""
        where = _where(entry, ".".join(str(part) for part in error.absolute_path))
        fault = Fault(where, _misfit(error), about or message("see-schema"))
        if fault not in told:
            told.add(fault)
            yield fault


def _misfit(error: Any) -> Message:
    """What an error of the validator says, without the value at length."""
    rule, expected, value = error.validator, error.validator_value, error.instance
    if rule == "required":
        return message("lacks", keys=", ".join(key for key in expected if key not in value))
    if rule in ("additionalProperties", "unevaluatedProperties"):
        unknown = (quoted(key) for key in value if key not in error.schema["properties"])
        return message("unknown-fields", keys=", ".join(unknown))
    id_ = f"breaks-{rule}"
    if id_ in message:
        return message(id_, value=quoted(value), expected=quoted(expected) if rule == "const" else str(expected))
    size = str(len(value)) if isinstance(value, str | list | dict) else quoted(value)
    return message("breaks-other", value=size, rule=str(rule), expected=str(expected))


def _fault(id_: str, entry: int | None = None, **values: str) -> Fault:
    """The fault of a message, of the whole file or of one entry by its number."""
    return Fault(_where(entry), message(f"{id_}.found", **values), message(f"{id_}.action", **values))


def _where(entry: int | None, path: str = "") -> Message:
    if entry is None:
        return message("file-at", path=path) if path else message("file")
    return message("entry-at", number=str(entry), path=path) if path else message("entry", number=str(entry))


def _contradictions(data: dict[str, Any]) -> Iterator[Fault]:
    """What a schema cannot say: entries of one visit, each once, with counters that can be true."""
    seen: set[str] = set()
    for number, entry in enumerate(data["entries"], 1):
        if entry["visit"] != data["visit"]:
            yield _fault("other-visit", number)
        if entry["id"] in seen:
            yield _fault("id-twice", number)
        if entry["n"] > len(data["entries"]) + 1000:
            yield _fault("counter-too-high", number, counter=str(entry["n"]))
        seen.add(entry["id"])
