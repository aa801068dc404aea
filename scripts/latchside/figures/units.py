"""Units as a reader sees them, in both systems."""

from __future__ import annotations

from functools import cache
from typing import Any

SYMBOLS = {
    "ohm": "Ω", "kohm": "kΩ", "Mohm": "MΩ", "uA": "µA", "degC": "°C", "degF": "°F", "deg": "°", "mm2": "mm²",
    "uV/m": "µV/m", "count": "", "year": "years", "month": "months", "d": "days",
    "in": "in", "ft": "ft", "rung": "rungs",
}  # fmt: skip
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
_LARGER = {"ohm": ("kohm", 1e3), "kohm": ("Mohm", 1e3), "uA": ("mA", 1e3), "mA": ("A", 1e3), "ms": ("s", 1e3)}
_WITHOUT_SPACE = ("°",)


def symbol(unit: str) -> str:
    """The sign of a unit in running text."""
    return SYMBOLS.get(unit, unit)


def readable(values: tuple[float, ...], unit: str) -> tuple[tuple[float, ...], str]:
    """The same quantities in a unit that keeps the figures short: 2,200 ohm becomes 2.2 kohm."""
    while unit in _LARGER and values and min(abs(v) for v in values) >= _LARGER[unit][1]:
        unit, factor = _LARGER[unit]
        values = tuple(v / factor for v in values)
    return values, unit


def other_system(value: float, unit: str) -> tuple[float, str] | None:
    """The value in the other system of units, or None where both use the same."""
    target = _OTHER.get(unit)
    if target is None:
        return None
    registry = _registry()
    converted = registry.Quantity(value, unit).to("force_pound" if target == "lbf" else target)
    return float(converted.magnitude), target


def figure(value: float) -> str:
    """A figure with at most four significant digits, thousands set apart, and a true minus sign."""
    rounded = float(f"{value:.4g}")
    text = f"{rounded:,.0f}" if rounded == int(rounded) else f"{rounded:,.10f}".rstrip("0")
    return text.replace("-", "\u2212")


def rounded_other(value: float, unit: str) -> str:
    """A converted figure, as rough as the figure it comes from."""
    digits = {"in": 2, "ft": 1, "lb": 1, "degF": 0, "degC": 0, "mm": 1, "m": 2, "lbf": 1}[unit]
    if unit == "mm" and abs(value) >= 10:
        digits = 0
    return figure(round(value, digits))


def with_unit(text: str, unit: str) -> str:
    """Figure and sign of the unit, kept together on one line."""
    sign = symbol(unit)
    if not sign:
        return text
    return f"{text}{sign}" if sign in _WITHOUT_SPACE else f"{text}\u00a0{sign}"


@cache
def _registry() -> Any:
    import pint  # slow to import; only pages and figures that convert need it

    registry: Any = pint.UnitRegistry()
    return registry
