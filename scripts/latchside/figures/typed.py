"""What a person types for a number: `30`, `0,22`, `50ft`, `3 1/2 in`, `5.6k`. Pint is loaded only to convert units."""

from __future__ import annotations

import math
import re
from typing import Any

from latchside.figures.lengths import UNITS as LENGTHS
from latchside.figures.lengths import LengthError, typed_length
from latchside.figures.units import registry, stated, with_unit
from latchside.messages import messages

message = messages(__name__)

_NUMBER = r"[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?"
_WHOLE = re.compile(rf"({_NUMBER})\s*([^\d\s.,;][^\d\s;]*2?)?\Z")
_POWER = re.compile(r"[+-]?[\d.]+[eE][+-]?\d+\Z")  # a number as programs write it, such as 1e-3
_PARTS = re.compile(rf"({_NUMBER})\s*([^\d\s.,;]+)\s*")
_MARKED = re.compile(r"(\d+)([kKMR])(\d+)\Z")  # 4k7, as on resistors
_THOUSANDS = re.compile(r"[+-]?[1-9]\d{0,2}(,\d{3})+\Z")
_UNIT = re.compile(r"[A-Za-z%]+[23]?(?:[*/.][A-Za-z]+[23]?)*\Z")
_SIGNS = {
    "\u2212": "-", "\u00a0": " ", "\u03a9": "ohm", "\u2126": "ohm", "µ": "u", "μ": "u", "²": "2", "·": ".",
    "\u2032": "'", "\u2033": '"', "°": "deg",
}  # fmt: skip
_ALIASES = {
    "mins": "min", "sec": "s", "secs": "s", "hrs": "h", "hr": "h", "yr": "year",
    "yrs": "year", "percent": "%", "mhz": "MHz", "Mhz": "MHz", "ghz": "GHz", "Ghz": "GHz",
}  # fmt: skip
_LETTERS = {
    "ohm": {"k": "kohm", "K": "kohm", "M": "Mohm", "R": "ohm"},
    "T": {"G": "gauss"}, "mT": {"G": "gauss"}, "degC": {"C": "degC", "F": "degF"},
}  # fmt: skip
"""What a letter stands for, by the input's unit."""
_PINT = {
    "mm2": "mm**2", "in2": "in**2", "mAh": "mA*hour", "Ah": "A*hour", "ohm.mm2/m": "ohm*mm**2/m", "h": "hour",
    "kohm": "kiloohm", "Mohm": "megaohm", "d": "day", "mW": "milliwatt",
}  # fmt: skip
_TESLA = {"T": 1e-4, "mT": 0.1}  # one gauss; Pint counts it among the units of another system
_COMPOUND = {"s", "min", "h", "d"}
_FIXED = {"AWG", "dB", "dBi", "%", "%/year", "count", "rung", "1/K", "1/d", "1/year"}
"""Units with no other way to say them."""


class TypedError(ValueError):
    """Text that is no number in a fitting unit; its words complete `<name>: `.

    `found` is what was found, without what to give instead; `advises` says whether the words say that too.
    """

    def __init__(self, words: str, found: str = "", *, advises: bool = False) -> None:
        super().__init__(words)
        self.found = found or words
        self.advises = advises or bool(found)


def _advised(id: str, **values: str) -> TypedError:
    """An error that says what to give instead."""
    return TypedError(message(id, **values), message(f"{id}.found", **values))


def read_number(value: object, unit: str) -> float:
    """The number in `unit` (`""` for none). `value` is a number, or text with or without a unit.

    Raises TypedError.
    """
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        raise TypedError(message("no-number", typed=repr(value)))
    if not isinstance(value, str):
        if not math.isfinite(value):
            raise TypedError(message("no-number", typed=str(value)))
        return float(value)
    text = value.strip()
    if unit in LENGTHS and not _POWER.match(text):
        try:
            return typed_length(value, unit, unit)
        except LengthError as error:
            raise TypedError(str(error)) from None
    for sign, plain in _SIGNS.items():
        text = text.replace(sign, plain)
    if len(text) > 60:
        raise TypedError(message("too-long"))
    text = _MARKED.sub(r"\1.\3\2", text) if unit == "ohm" else text
    match = _WHOLE.match(text)
    if match:
        return _in_unit(_number(match[1], text), match[2] or "", unit, value)
    parts = _PARTS.findall(text)
    if unit in _COMPOUND and len(parts) > 1 and "".join(_PARTS.split(text)[::3]).strip() == "":
        whole = math.fsum(_in_unit(_number(number, number), typed, unit, value) for number, typed in parts)
        return float(f"{whole:.12g}")
    quoted = f'"{value}"'
    raise TypedError(message("no-number-in", typed=quoted, unit=unit) if unit else message("no-number", typed=quoted))


def read_list(value: object, unit: str) -> list[float]:
    """The numbers of a list, or of text separated by semicolons (a comma then marks decimals), commas or spaces."""
    if isinstance(value, str):
        text = value.strip()
        if text in ("", "none"):
            return []
        items: list[object] = list(re.split(r";" if ";" in text else r"," if "," in text else r"\s+", text))
    elif isinstance(value, list | tuple):
        items = list(value)
    else:
        items = [value]
    if len(items) > 40:
        raise _advised("many-entries", entries=str(len(items)))
    return [read_number(item, unit) for item in items]


def shown_value(value: float, unit: str) -> str:
    """A number that was stated, with the sign of its unit, as messages show it."""
    return with_unit(stated(value), unit).replace("\u00a0", " ")


def _number(text: str, whole: str) -> float:
    if _THOUSANDS.match(text):
        plain = text.replace(",", "")
        if text.count(",") == 1:
            raise _advised("thousands-or-decimals", typed=whole, plain=plain, other=text.replace(",", "."))
        raise _advised("thousands", typed=whole, plain=plain)
    number = float(text.replace(",", "."))
    if not math.isfinite(number):
        raise TypedError(message("too-large", typed=whole))
    return number


def _in_unit(number: float, typed: str, unit: str, value: str) -> float:
    name = _LETTERS.get(unit, {}).get(typed) or _ALIASES.get(typed, typed)
    if not name or name == unit or name.lower() == unit.lower():
        return number
    if unit == "dBm" and name in ("W", "mW", "uW"):
        milliwatt = number * {"W": 1e3, "mW": 1.0, "uW": 1e-3}[name]
        if milliwatt <= 0:
            raise _advised("no-dbm", typed=value)
        return 10 * math.log10(milliwatt)
    if name.lower() == "gauss" and unit in _TESLA:
        return float(f"{number * _TESLA[unit]:.12g}")
    if not unit and name == "%":
        return number / 100
    if not unit or unit in _FIXED or not _UNIT.match(name):
        raise _advised("other-unit", typed=value, unit=typed, wanted=_wanted(unit))
    return _converted(number, name, unit, value)


def _converted(number: float, name: str, unit: str, value: str) -> float:
    units: Any = registry()
    for spelling in dict.fromkeys((_PINT.get(name, name), name.lower())):
        try:
            quantity = units.Quantity(number, units.parse_units(spelling))
            return float(f"{float(quantity.to(_PINT.get(unit, unit)).magnitude):.12g}")
        except Exception as error:  # Pint raises types of its own, of several families
            if type(error).__name__ == "UndefinedUnitError":
                continue
            break
    raise _advised("unfit-unit", typed=value, wanted=_wanted(unit))


def _wanted(unit: str) -> str:
    return message("wanted-in", unit=unit) if unit and unit not in _FIXED else message("wanted-plain")
