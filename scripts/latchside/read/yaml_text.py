"""YAML text to plain values, with the place of every value.

The reader is stricter than YAML 1.1: `NO`, `on`, `12:30` and `022` stay text, only `true` and `false` are
booleans, and anchors, aliases, tags and duplicate keys are refused. `~` and `null` say nothing, as a blank does. It
builds values from the parser's events, because only the events still tell an anchor from a plain value.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

import yaml

from latchside.findings import START, Finding, Place, place_after, quoted
from latchside.messages import messages

message = messages(__name__)

Path = tuple[str | int, ...]
DEEPEST = 32
_Loader: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_NOTHING = ("", "~", "null")
"""What YAML writes for no value; quoted, each is the text that it looks like."""
_INTEGER = re.compile(r"[-+]?(0|[1-9][0-9]*)\Z")
_DECIMAL = re.compile(r"[-+]?(0|[1-9][0-9]*)\.[0-9]+([eE][-+]?[0-9]+)?\Z|[-+]?[1-9][0-9]*[eE][-+]?[0-9]+\Z")


class _Refused(Exception):  # noqa: N818  (it is a refusal, not a failure of ours)
    def __init__(self, place: Place, code: str, found: str, expected: str, action: str) -> None:
        self.finding = (place, code, found, expected, action)


def _empty() -> _Refused:
    return _Refused(START, "empty-file", *message.finding("empty-file"))


@dataclass
class Document:
    """A read document: its value, the place of every value and of every key, and what was wrong with it."""

    value: Any = None
    places: dict[Path, Place] = field(default_factory=dict)
    keys: dict[Path, Place] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)


def read_text(text: str, file: str) -> Document:
    """The document in `text`; `file` is only its name in findings. Never raises for bad input."""
    document = Document()
    if not text.strip():
        document.findings.append(Finding(file, *_empty().finding))
        return document
    loader = None
    try:
        loader = _Loader(text)
        _Builder(loader, document, file).build()
    except _Refused as refused:
        document.value = None
        document.findings.append(Finding(file, *refused.finding))
    except yaml.YAMLError as error:
        document.value = None
        document.findings.append(_syntax_finding(error, text, file))
    finally:
        if loader is not None:
            loader.dispose()
    return document


def scalar(text: str) -> Any:
    """The value of a plain (unquoted) scalar: a number, true, false, nothing, or the text itself."""
    if text in _NOTHING:
        return None
    if text in ("true", "false"):
        return text == "true"
    if _INTEGER.match(text) and len(text) < 16:
        return int(text)
    if _DECIMAL.match(text) and len(text) < 32 and math.isfinite(float(text)):
        return float(text)
    return text


class _Builder:
    def __init__(self, loader: Any, document: Document, file: str) -> None:
        self._events: Iterator[Any] = iter(loader.get_event, None)
        self._document = document
        self._file = file

    def build(self) -> None:
        if not any(isinstance(event, yaml.DocumentStartEvent) for event in self._events):
            raise _empty()
        self._document.value = self._value(next(self._events), ())
        if self._document.value is None:
            raise _empty()
        next(self._events)
        after = next(self._events)
        if isinstance(after, yaml.DocumentStartEvent):
            raise _Refused(_place(after), "second-document", *message.finding("second-document"))

    def _value(self, event: Any, path: Path) -> Any:
        place = _place(event)
        self._refuse_references(event, place)
        if len(path) > DEEPEST:
            raise _Refused(place, "too-deep", *message.finding("too-deep", most=DEEPEST))
        self._document.places[path] = place
        if isinstance(event, yaml.ScalarEvent):
            return scalar(event.value) if event.implicit[0] else event.value
        if isinstance(event, yaml.SequenceStartEvent):
            return self._sequence(path)
        return self._mapping(path)

    def _refuse_references(self, event: Any, place: Place) -> None:
        anchor = getattr(event, "anchor", None)
        if anchor is not None:
            mark = "*" if isinstance(event, yaml.AliasEvent) else "&"
            raise _Refused(place, "anchor-or-alias", *message.finding("anchor-or-alias", name=f"{mark}{anchor}"))
        if getattr(event, "tag", None) not in (None, "!"):
            raise _Refused(place, "yaml-tag", *message.finding("yaml-tag", tag=quoted(event.tag)))

    def _sequence(self, path: Path) -> list[Any]:
        items: list[Any] = []
        while not isinstance(event := next(self._events), yaml.SequenceEndEvent):
            items.append(self._value(event, (*path, len(items))))
        return items

    def _mapping(self, path: Path) -> dict[str, Any]:
        mapping: dict[str, Any] = {}
        while not isinstance(event := next(self._events), yaml.MappingEndEvent):
            place = _place(event)
            self._refuse_references(event, place)
            if not isinstance(event, yaml.ScalarEvent):
                raise _Refused(place, "key-not-text", *message.finding("key-not-text"))
            key = event.value
            value = self._value(next(self._events), (*path, key))
            if key in mapping:
                first = self._document.keys[*path, key].line
                twice = message.finding("duplicate-key", key=quoted(key), line=str(first))
                self._document.findings.append(Finding(self._file, place, "duplicate-key", *twice))
                continue
            self._document.keys[*path, key] = place
            mapping[key] = value
        return mapping


def _place(event: Any) -> Place:
    return Place(event.start_mark.line + 1, event.start_mark.column + 1)


def _syntax_finding(error: yaml.YAMLError, text: str, file: str) -> Finding:
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    if mark is None:  # the reader's own error: a character YAML does not allow; its position counts bytes
        before = text.encode()[: getattr(error, "position", 0) or 0].decode("utf-8", "ignore")
        return Finding(file, place_after(before), "bad-character", *message.finding("bad-character"))
    place = Place(mark.line + 1, mark.column + 1)
    lines = text.splitlines()
    line = lines[mark.line] if mark.line < len(lines) else ""
    if "\t" in line[: len(line) - len(line.lstrip())]:
        return Finding(file, place, "tab-indent", *message.finding("tab-indent"))
    problem = getattr(error, "problem", None) or message("not-yaml")
    broken = message.finding("broken-yaml", problem=problem, line=quoted(line.strip()))
    return Finding(file, place, "broken-yaml", *broken)
