"""The blanks of a record that is being written: texts that stand for what somebody has to fill in."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

BLANK = "FILL IN"
BLANK_ID = "fill-in"
_BLANK = re.compile(r"FILL IN(?: (?P<id>[a-z0-9]+(?:-[a-z0-9]+)*))?|fill-in(?:-[0-9]+)?")


def is_blank(value: object) -> bool:
    """Whether a value is a blank: `FILL IN`, `FILL IN some-id`, `fill-in` or `fill-in-2`, and nothing else."""
    return isinstance(value, str) and _BLANK.fullmatch(value) is not None


def named(value: str) -> str:
    """The id that a blank proposes: that of `FILL IN some-id`; empty for any other."""
    found = _BLANK.fullmatch(value)
    return (found["id"] or "") if found else ""


def blanks(value: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[tuple[str | int, ...], str]]:
    """The path and the text of every blank in the plain value of a record, in the order of the record."""
    if is_blank(value):
        yield path, value
    elif isinstance(value, dict):
        for key, below in value.items():
            yield from blanks(below, (*path, key))
    elif isinstance(value, list):
        for index, below in enumerate(value):
            yield from blanks(below, (*path, index))
