"""Units as a reader sees them, in both systems."""

from __future__ import annotations

from functools import cache, lru_cache
from typing import Any

from latchside.messages import messages

message = messages(__name__)

SYMBOLS = {
    "ohm": "Ω", "kohm": "kΩ", "Mohm": "MΩ", "uA": "µA", "degC": "°C", "degF": "°F", "deg": "°", "mm2": "mm²",
    "uV/m": "µV/m", "ohm/km": "Ω/km", "ohm.mm2/m": "Ω·mm²/m", "1/K": "/K", "count": "",
}  # fmt: skip
"""Signs of units, where they differ from the name that records use."""
_WORDED = {
    "year": "year", "month": "month", "d": "day", "rung": "rung", "%/year": "percent-a-year", "1/d": "a-day",
    "1/year": "a-year",
}  # fmt: skip
"""Units that are said in words, each with its message."""
_OTHER = {
    "mm": "in",
    "cm": "in",
    "m": "ft",
    "in": "mm",
    "ft": "m",
    "kg": "lb",
    "degC": "degF",
    "degF": "degC",
    "N": "lbf",
}
IMPERIAL = frozenset({"in", "ft", "lb", "degF", "lbf"})
"""The units of North America; other units that `_OTHER` has are metric."""
_LARGER = {"ohm": ("kohm", 1e3), "kohm": ("Mohm", 1e3), "uA": ("mA", 1e3), "mA": ("A", 1e3), "ms": ("s", 1e3)}
_WITHOUT_SPACE = ("°", "/K")
_SUPERSCRIPTS = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


@cache
def symbol(unit: str, *, one: bool = False) -> str:
    """The sign of a unit in running text; where it is said in words, those for `one` or for many."""
    if unit in _WORDED:
        return str(message(f"unit-{_WORDED[unit]}", count=1 if one else 2))
    return SYMBOLS.get(unit, unit)


def readable(values: tuple[float, ...], unit: str) -> tuple[tuple[float, ...], str]:
    """The same quantities in a unit that keeps the figures short: 2,200 ohm becomes 2.2 kohm."""
    while unit in _LARGER and values and min(abs(v) for v in values) >= _LARGER[unit][1]:
        unit, factor = _LARGER[unit]
        values = tuple(v / factor for v in values)
    return values, unit


@lru_cache(maxsize=10_000)
def other_system(value: float, unit: str) -> tuple[float, str] | None:
    """The value in the other system of units, or None where both use the same."""
    target = _OTHER.get(unit)
    if target is None:
        return None
    converted = registry().Quantity(value, unit).to("force_pound" if target == "lbf" else target)
    return float(converted.magnitude), target


def figure(value: float) -> str:
    """A figure with at most four significant digits, thousands set apart, and a true minus sign.

    Very small and very large ones are written as 1.2 × 10⁻⁷. The page's script writes the same text.
    """
    digits, exponent = _four_digits(value)
    sign = "\u2212" if value < 0 and digits else ""
    if digits and not -5 < exponent < 15:
        short = f"{digits[0]}.{digits[1:]}".rstrip("0").rstrip(".")
        return f"{sign}{short} × 10{str(exponent).translate(_SUPERSCRIPTS)}"
    if exponent < 0:
        return f"{sign}0.{'0' * (-1 - exponent)}{digits.rstrip('0')}" if digits else "0"
    whole = digits[: exponent + 1].ljust(exponent + 1, "0")
    rest = digits[exponent + 1 :].rstrip("0")
    return f"{sign}{int(whole or 0):,}{f'.{rest}' if rest else ''}"


def stated(value: float) -> str:
    """A figure as a person or a record stated it, not rounded: 433.92 stays 433.92."""
    if not value or not 1e-4 <= abs(value) < 1e12:
        return figure(value)
    whole, _, rest = f"{abs(value):.12g}".partition(".")
    sign = "\u2212" if value < 0 else ""
    return f"{sign}{int(whole):,}{f'.{rest}' if rest else ''}"


def signed(value: float) -> str:
    """A figure that is compared with others on both sides of zero: with its sign, above zero too."""
    return f"+{stated(value)}" if value > 0 else stated(value)


def upper_end(low: str, high: str) -> str:
    """The upper end of a range as it is shown: with a plus where the range goes through zero."""
    return f"+{high}" if low.startswith("\u2212") and high.lstrip("0.")[:1].isdigit() else high


def _four_digits(value: float) -> tuple[str, int]:
    """The first four digits and the power of ten of the first; no digits for zero.

    Rounded to twelve digits and then, halves up, to four: so the last bits of a working never decide.
    """
    if not value:
        return "", 0
    mantissa, _, power = f"{abs(value):.11e}".partition("e")
    number = int(mantissa[0] + mantissa[2:])
    rounded, exponent = (number + 50_000_000) // 100_000_000, int(power)
    return ("1000", exponent + 1) if rounded == 10_000 else (str(rounded), exponent)


def rounded_other(value: float, unit: str) -> str:
    """A converted figure, as rough as the figure it comes from, and never so rough that it vanishes."""
    digits = {"in": 2, "ft": 1, "lb": 1, "degF": 0, "degC": 0, "mm": 1, "m": 2, "lbf": 1}[unit]
    if unit == "mm" and abs(value) >= 10:
        digits = 0
    rounded = round(value, digits)
    vanishes = abs(rounded) < 2 * 10**-digits and unit not in ("degC", "degF")
    return figure(float(f"{value:.2g}") if vanishes else rounded)


def with_unit(text: str, unit: str) -> str:
    """Figure and sign of the unit, kept together on one line."""
    sign = symbol(unit, one=text == "1")
    if not sign:
        return text
    return f"{text}{sign}" if sign in _WITHOUT_SPACE else f"{text}\u00a0{sign}"


@cache
def registry() -> Any:
    """Pint's units, made once."""
    import pint  # slow to import; only pages and figures that convert need it

    registry: Any = pint.UnitRegistry()
    return registry
