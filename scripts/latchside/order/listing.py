"""What `latchside fault-order` reads from a file: a plain list of causes, or one fault record."""

from __future__ import annotations

import json
from collections.abc import Iterator
from math import isfinite
from pathlib import Path
from typing import Any

from latchside.findings import START, Finding, did_you_mean, quoted
from latchside.messages import messages
from latchside.read.tree import LARGEST
from latchside.read.yaml_text import Document, read_text

message = messages(__name__)
KEYS = ("cause", "probability", "minutes")
SUM_WITHIN = 1e-5
"""How far the probabilities may add up beside one: thirds written with six digits pass."""


def read_file(path: Path) -> Document:
    """The document in a YAML or JSON file; what is wrong with the file is among its findings."""
    file = str(path)
    if path.stat().st_size > LARGEST:
        return _refused(file, "file-too-large", *message.finding("too-large", most=LARGEST))
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError:
        return _refused(file, "not-utf-8", *message.finding("not-utf-8"))
    document = read_text(text, file)
    if document.value is None and text.strip():
        try:  # JSON holds a little that YAML refuses, tabs for one; its places are not known
            return Document(json.loads(text))
        except (ValueError, RecursionError):
            pass
    return document


def _refused(file: str, code: str, found: str, expected: str, action: str) -> Document:
    return Document(findings=[Finding(file, START, code, found, expected, action)])


def list_findings(document: Document, file: str) -> tuple[Finding, ...]:
    """What is wrong with a plain list of causes."""
    if not isinstance(document.value, list) or not document.value:
        found = message("empty-list") if document.value == [] else quoted(document.value)
        problem = message.finding("not-a-list", found=found, keys=", ".join(KEYS))
        return (Finding(file, START, "not-a-list", *problem),)
    entries = enumerate(document.value)
    found_all = [finding for index, entry in entries for finding in _entry(document, file, index, entry)]
    return tuple(found_all or [*_repeated(document, file), *_sum(document, file)])


def _entry(document: Document, file: str, index: int, entry: Any) -> Iterator[Finding]:
    place = document.places.get((index,), START)
    if not isinstance(entry, dict):
        problem = message.finding("not-a-group", found=quoted(entry), keys=", ".join(KEYS))
        yield Finding(file, place, "wrong-type", *problem)
        return
    for key in entry:
        if key not in KEYS:
            at = document.keys.get((index, key), place)
            hint = did_you_mean(key, KEYS)
            problem = message.finding("unknown-key", key=quoted(key), keys=", ".join(KEYS), hint=hint)
            yield Finding(file, at, "unknown-key", *problem)
    for key in KEYS:
        at = document.places.get((index, key), place)
        if key not in entry:
            yield Finding(file, place, "missing-key", *message.finding("missing-key", quoted=quoted(key), key=key))
        elif key == "cause":
            if not isinstance(entry[key], str) or not entry[key].strip() or not entry[key].isprintable():
                yield Finding(file, at, "wrong-type", *message.finding("no-name", value=quoted(entry[key]), key=key))
        else:
            yield from _number(file, at, key, entry[key])


def _number(file: str, place: Any, key: str, value: Any) -> Iterator[Finding]:
    if isinstance(value, bool) or not isinstance(value, int | float) or not isfinite(value):
        yield Finding(file, place, "wrong-type", *message.finding("no-number", value=quoted(value), key=key))
    elif value < 0:
        yield Finding(file, place, "negative-number", *message.finding("negative", value=str(value), key=key))


def _repeated(document: Document, file: str) -> Iterator[Finding]:
    first: dict[str, int] = {}
    for index, entry in enumerate(document.value):
        if first.setdefault(entry["cause"], index) != index:
            place = document.places.get((index, "cause"), START)
            yield Finding(file, place, "repeated-id", *message.finding("twice", cause=quoted(entry["cause"])))


def _sum(document: Document, file: str) -> Iterator[Finding]:
    total = sum(entry["probability"] for entry in document.value)
    if abs(total - 1) > SUM_WITHIN:
        place = document.places.get((), START)
        yield Finding(file, place, "probability-sum", *message.finding("sum", total=f"{total:.6g}"))
