"""Figures in one system of units: texts of a plan name both, a sheet for one site shows that of its region."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache, partial

from latchside.figures.tape import on_a_tape
from latchside.figures.units import IMPERIAL, SYMBOLS, figure, other_system, rounded_other, with_unit
from latchside.figures.words import in_both
from latchside.library.quantity import Quantity

_NUMBER = r"[+\u2212]?\d[\d,.]*"
_METRIC = r"\u00a0?(?:mm|cm|m|kg|N|°C)"
_OTHERS = r"\u00a0?(?:in|ft|lb|lbf|°F)"
_MOST = 6
"""So many figures may stand before one unit, as in `1, 2 or 5 mm`."""


@lru_cache(maxsize=20_000)
def in_system(text: str, *, imperial: bool) -> str:
    """The text with each quantity that it names in both systems of units in one of them.

    The figures before a unit and those in the brackets behind it are as many: so it is known where they begin.
    """
    if "(" not in text:
        return text
    for pattern in _patterns():
        text = pattern.sub(partial(_chosen, "other" if imperial else "own"), text)
    return text


def _chosen(system: str, found: re.Match[str]) -> str:
    """The figures of one system: those in the brackets are converted, and a tape has no marks for all of them."""
    converted = found.start(system) > found.start() and not found.string.startswith(" ±", found.end())
    return on_a_tape(found[system]) if converted else found[system]


def _patterns() -> Iterator[re.Pattern[str]]:
    for count in range(_MOST, 0, -1):
        row = rf"{_NUMBER}(?:[ ,a-z]+{_NUMBER}){{{count - 1}}}"
        yield _pattern(rf"(?P<own>{row}{_METRIC}) \((?P<other>{row}{_OTHERS})\)")
        yield _pattern(rf"(?P<other>{row}{_OTHERS}) \((?P<own>{row}{_METRIC})\)")


@lru_cache(maxsize=2 * _MOST)
def _pattern(pattern: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![\d.,]){pattern}")


def quantity_in(shown: Quantity, *, imperial: bool) -> str:
    """A quantity in words, in one system of units."""
    own, other, own_is_imperial = in_both(shown)
    if other is None or own_is_imperial == imperial:
        return own
    return other if shown.plus_minus or shown.percent else on_a_tape(other)


def figure_in(value: float, unit: str, *, imperial: bool) -> tuple[str, str]:
    """A figure without its unit, and its unit, in one system of units."""
    converted = None if (unit in IMPERIAL) == imperial else other_system(value, unit)
    return (figure(value), unit) if converted is None else (rounded_other(*converted), converted[1])


def unit_in(unit: str, *, imperial: bool) -> str:
    """The sign of a unit, or of the one that stands for it in the other system."""
    sign = figure_in(1, unit, imperial=imperial)[1]
    return SYMBOLS.get(sign, sign)


def amount_in(value: float, unit: str, *, imperial: bool) -> str:
    """A figure with its unit, in one system of units."""
    return with_unit(*figure_in(value, unit, imperial=imperial))
