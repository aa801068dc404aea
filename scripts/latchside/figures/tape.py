"""Converted lengths as a tape shows them: whole inches, halves to sixteenths, feet and inches, round millimetres."""

from __future__ import annotations

import re
from collections.abc import Iterator
from math import floor

_FIGURE = re.compile(r"\d+(?:,\d{3})*(?:\.\d+)?")
_UNIT = re.compile(r"\u00a0?(mm|cm|m|in|ft)$")
_NEAR = 0.02
"""A converted length is as rough as what it comes from: so far it may move to the mark of a tape."""
_FEET = 10
"""From so many feet on whole feet do."""


def on_a_tape(text: str) -> str:
    """Figures before one unit, as in `2 to 5.91 in`, at the marks of a tape; as they are where one has no mark near."""
    found = _UNIT.search(text)
    if found is None:
        return text
    row = text[: found.start()]
    marks = [_mark(float(one.replace(",", "")), found[1]) for one in _FIGURE.findall(row)]
    if not all(marks):
        return text
    shown: Iterator[str] = iter([one for one in marks if one])
    made = _FIGURE.sub(lambda _: next(shown), row)
    return made if found[1] == "ft" else f"{made}\u00a0{found[1]}"  # feet carry their units


def _mark(value: float, unit: str) -> str | None:
    if unit == "in":
        return _inches(value)
    if unit == "ft":
        return _feet(value)
    steps = {"mm": (10, 5, 1), "cm": (1,), "m": (1, 0.1)}[unit]
    near = (round(value / step) * step for step in steps if step < value)
    return next((f"{one:,.10g}" for one in near if abs(one - value) <= _NEAR * value), None)


def _inches(value: float) -> str | None:
    for parts in (1, 2, 4) if value < 1 else (1, 2, 4, 8, 16):
        sixteenths = round(value * parts) * 16 // parts
        if sixteenths and abs(sixteenths / 16 - value) <= _NEAR * value:
            return _fraction(sixteenths)
    return None


def _fraction(sixteenths: int) -> str:
    whole, left = divmod(sixteenths, 16)
    if not left:
        return str(whole)
    parts = 16
    while left % 2 == 0:
        left, parts = left // 2, parts // 2
    return f"{whole}\u00a0{left}/{parts}" if whole else f"{left}/{parts}"


def _feet(value: float) -> str | None:
    if value >= _FEET:
        return f"{floor(value + 0.5):,}\u00a0ft"
    feet, inches = divmod(round(value * 12), 12)
    return None if not feet else f"{feet}\u00a0ft {inches}\u00a0in" if inches else f"{feet}\u00a0ft"
