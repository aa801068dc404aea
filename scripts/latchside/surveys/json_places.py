"""Where each value and key of a JSON text stands. The text is sound JSON already; nothing is read but places."""

from __future__ import annotations

import json
import re
from bisect import bisect_right
from dataclasses import dataclass, field

from latchside.findings import Place
from latchside.read.yaml_text import Path

_TOKEN = re.compile(r'[ \t\r\n]*("(?:[^"\\]|\\.)*"|[][{},:]|[^][{},:"\s]+)', re.DOTALL)


@dataclass
class JsonPlaces:
    """The places of values and of keys by their path, and the paths of keys that stand there a second time."""

    values: dict[Path, Place] = field(default_factory=dict)
    keys: dict[Path, Place] = field(default_factory=dict)
    twice: list[tuple[Path, Place]] = field(default_factory=list)


@dataclass
class _Open:
    """An object or a list that is not closed yet; `at` is the key or the number of what comes next."""

    path: Path
    listed: bool
    at: str | int | None


def json_places(text: str) -> JsonPlaces:
    """The places in sound JSON; of a key that stands there twice, the value is the last, as in the data."""
    found = JsonPlaces()
    lines = [0, *(match.end() for match in re.finditer("\n", text))]
    open_: list[_Open] = []
    for match in _TOKEN.finditer(text):
        sign, start = match[1], match.start(1)
        line = bisect_right(lines, start)
        place = Place(line, start - lines[line - 1] + 1)
        here = open_[-1] if open_ else None
        if sign in "}]":
            open_.pop()
        elif sign == ",":
            if here is not None:
                here.at = here.at + 1 if isinstance(here.at, int) else None
        elif sign == ":":
            continue
        elif here is not None and not here.listed and here.at is None:
            here.at = json.loads(sign)
            path = (*here.path, str(here.at))
            if path in found.keys:
                found.twice.append((path, place))
            found.keys[path] = place
        else:
            path = (*here.path, here.at) if here is not None and here.at is not None else ()
            found.values[path] = place
            if sign in "{[":
                open_.append(_Open(path, sign == "[", 0 if sign == "[" else None))
    return found
