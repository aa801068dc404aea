"""A length as people write it: `4 mm`, `3/16 in`, `1 3/16"`, `12 ft 6 in`, `2,5 m`, or a number without a unit.

The one grammar of lengths: surveys and figures read by it. `content/assets/js/core/lengths.js` does the same in pages.
"""

from __future__ import annotations

import math
import re
from typing import Literal

from latchside.findings import quoted
from latchside.messages import messages

message = messages(__name__)

Unit = Literal["mm", "m"]

UNITS = {
    "mm": 1.0, "cm": 10.0, "m": 1000.0, "km": 1_000_000.0, "thou": 0.0254, "in": 25.4, "ft": 304.8, "yd": 914.4,
}  # fmt: skip
"""The units of a length, each in millimetres."""
_BARE = {("mm", False): "mm", ("m", False): "m", ("mm", True): "in", ("m", True): "ft"}
_WORDS = {
    "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm", "centimetre": "cm",
    "centimetres": "cm", "centimeter": "cm", "centimeters": "cm", "metre": "m", "metres": "m", "meter": "m",
    "meters": "m", "kilometre": "km", "kilometres": "km", "kilometer": "km", "kilometers": "km", "mil": "thou",
    "mils": "thou", "inch": "in", "inches": "in", '"': "in", "''": "in", "foot": "ft", "feet": "ft", "'": "ft",
    "yard": "yd", "yards": "yd",
}  # fmt: skip
_SIGNS = str.maketrans(
    {
        "\u2212": "-", "\u2013": "-", "\u00a0": " ", "\u202f": " ", "\u2009": " ", "\u2032": "'", "\u2019": "'",
        "\u2033": '"', "\u201d": '"', "\u2044": "/", "\u00bc": " 1/4", "\u00bd": " 1/2", "\u00be": " 3/4",
        "\u215b": " 1/8", "\u215c": " 3/8", "\u215d": " 5/8", "\u215e": " 7/8",
    }
)  # fmt: skip
_NUMBER = r"\d{1,7}(?:[ -]+\d{1,3}/\d{1,4}|/\d{1,4}|[.,]\d{0,9})?|[.,]\d{1,9}"
_PART = re.compile(rf"({_NUMBER})\s*([a-z]+|\"|''?)?\.?\s*", re.ASCII)
_THOUSANDS = re.compile(r"[1-9]\d{0,2},\d{3}(?![\d.,])", re.ASCII)
METRIC = ("mm", "cm", "m", "km")
_LONGEST = 40


class LengthError(ValueError):
    """Text that is no length; its words say what was found."""

    @property
    def expected(self) -> str:
        """What is needed instead."""
        return message("expected")


def read_length(value: object, unit: Unit, *, imperial: bool = False, signed: bool = False) -> float:
    """The length in `unit`. A number without one is in it too or, with `imperial`, in inches for mm and in feet for m.

    Raises LengthError; without `signed`, for a negative length too.
    """
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        raise LengthError(message("no-length", typed=quoted(value)))
    bare = _BARE[unit, imperial]
    number = typed_length(value, unit, bare) if isinstance(value, str) else _rounded(_bare(value, bare) / UNITS[unit])
    if number < 0 and not signed:
        raise LengthError(message("below-zero", typed=quoted(value)))
    return number


def _bare(value: float, bare: str) -> float:
    if not math.isfinite(value) or abs(value) >= 1e7:
        raise LengthError(message("out-of-bounds", typed=str(value)))
    return value * UNITS[bare]


def _rounded(number: float) -> float:
    return float(f"{number:.12g}") + 0.0


def typed_length(value: str, unit: str, bare: str) -> float:
    """The length in `unit`, one of `UNITS`, of a text; a number without a unit is in `bare`. Raises LengthError."""
    if len(value) > _LONGEST:
        raise LengthError(message("too-long", typed=quoted(value)))
    text = value.translate(_SIGNS).strip().lower()
    minus = text.startswith("-")
    text = text[1:].lstrip() if text[:1] in ("-", "+") else text
    parts = _parts(text, value, bare)
    total = _rounded(sum(number * UNITS[of] for number, of in parts) / UNITS[unit])
    return -total if minus and total else total


def _parts(text: str, value: str, bare: str) -> list[tuple[float, str]]:
    parts: list[tuple[float, str]] = []
    at = 0
    while at < len(text):
        match = _PART.match(text, at)
        if not match:
            raise LengthError(message("no-length", typed=quoted(value)))
        at = match.end()
        named = match[2]
        of_what = "/" in match[1] and bare in METRIC  # nobody writes a fraction of a millimetre: it was an inch
        if named is None and (parts or at < len(text) or of_what):
            raise LengthError(message("no-unit", typed=quoted(value), figure=match[1]))
        of = bare if named is None else _WORDS.get(named, named)
        if of not in UNITS:
            typed = value[value.lower().find(str(named)) :][: len(str(named))]
            raise LengthError(message("unknown-unit", typed=quoted(value), unit=quoted(typed)))
        parts.append((_fraction(match[1], value), of))
    if not parts:
        raise LengthError(message("only-signs", typed=quoted(value)) if value.strip() else message("nothing"))
    if len(parts) > 1 and [of for _, of in parts] != ["ft", "in"]:
        raise LengthError(message("several", typed=quoted(value)))
    if len(parts) > 1 and parts[0][0] % 1:
        raise LengthError(message("broken-feet", typed=quoted(value)))
    return parts


def _fraction(text: str, value: str) -> float:
    if _THOUSANDS.fullmatch(text):
        plain, other = text.replace(",", ""), text.replace(",", ".")
        raise LengthError(message("thousands", typed=quoted(value), plain=plain, other=other))
    whole, _, rest = text.replace("-", " ").rpartition(" ")
    if "/" not in rest:
        return float(rest.replace(",", "."))
    over, under = map(int, rest.split("/"))
    if not under or (whole and over >= under):
        raise LengthError(message("no-fraction", typed=quoted(value), fraction=rest))
    return int(whole.strip() or 0) + over / under
