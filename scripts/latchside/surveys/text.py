"""The text of a survey file: its encoding, and YAML or JSON as data with the place of each value."""

from __future__ import annotations

import codecs
import json
import math
import re

from latchside.findings import START, Finding, Place, place_after, quoted
from latchside.messages import messages
from latchside.read.yaml_text import Document, read_text
from latchside.surveys.json_places import json_places

message = messages(__name__)
_EMPTY = re.compile("[\u00ad\u061c\u200b\u200e\u200f\u2060\ufeff]")
"""Signs without width that come along when text is copied: a soft hyphen, spaces of no width, marks of direction."""
_HIDDEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]"
)
"""Signs that no text of a survey needs: controls, turns of the direction of writing, halves of characters."""
_WIDE = ((codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))


class _Refused(ValueError):  # noqa: N818
    pass


def without_empty(text: str) -> str:
    """A text without signs that have no width and no meaning: what is left is what its writer saw."""
    return _EMPTY.sub("", text)


def strange_sign(text: str) -> str | None:
    """The first sign in a text that cannot be seen and has no place in it."""
    match = _HIDDEN.search(text)
    return match[0] if match else None


def visible(text: str) -> str:
    """A text with a mark in the place of each such sign."""
    return _HIDDEN.sub("\ufffd", text)


def decoded(content: bytes, file: str) -> str | Finding:
    """The text of a file. UTF-8 with or without its mark is read, and UTF-16 where it is marked."""
    for mark, name in _WIDE:
        if content.startswith(mark):
            try:
                return content.decode(name)
            except UnicodeDecodeError:
                return _not_text(file, START, message("damaged"))
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        place = place_after(content[: error.start].decode("utf-8", "replace"))
        return _not_text(file, place, message("other-byte", byte=f"0x{content[error.start]:02x}"))
    if "\x00" in text:
        return _not_text(file, START, message("zero-bytes"))
    return text


def document_of(content: bytes, ending: str, file: str) -> Document | Finding:
    """The data in YAML or JSON."""
    text = decoded(content, file)
    if isinstance(text, Finding):
        return text
    return read_text(text, file) if ending != ".json" else _json(text, file)


def _not_text(file: str, place: Place, found: str) -> Finding:
    return Finding(file, place, "not-utf-8", found, message("not-utf-8.expected"), message("not-utf-8.action"))


def _json(text: str, file: str) -> Document:
    """JSON by its own reader, with the place of each value."""
    try:
        value = json.loads(text, parse_constant=_no_number, parse_float=_float, parse_int=_int)
    except json.JSONDecodeError as error:
        place = Place(error.lineno, error.colno)
        return _broken(file, place, message("no-json", error=error.msg.lower()))
    except (_Refused, RecursionError, ValueError) as error:
        return _broken(file, START, str(error) if isinstance(error, _Refused) else message("unreadable-json"))
    places = json_places(text)
    twice = [_twice(file, place, str(path[-1])) for path, place in places.twice]
    return Document(value, places.values, places.keys, twice)


def _twice(file: str, place: Place, key: str) -> Finding:
    return Finding(file, place, "duplicate-key", *message.finding("duplicate-key", key=quoted(key)))


def _broken(file: str, place: Place, found: str) -> Document:
    expected, action = message("broken-json.expected"), message("broken-json.action")
    return Document(None, {}, {}, [Finding(file, place, "broken-json", found, expected, action)])


def _no_number(word: str) -> float:
    raise _Refused(message("not-a-number", text=quoted(word)))


def _float(text: str) -> float:
    number = float(text)
    return number if math.isfinite(number) else _no_number(text)


def _int(text: str) -> int | float:
    return int(text) if len(text) < 16 else _float(text)
