"""A quantity in words: the one way every number of the library is shown."""

from __future__ import annotations

from collections.abc import Callable
from math import floor, log10

from latchside.figures.units import figure, other_system, readable, rounded_other, stated, with_unit
from latchside.library.quantity import Quantity


def in_words(quantity: Quantity) -> str:
    """The quantity in short: figure, unit, the other system in brackets, tolerance."""
    if quantity.value is not None:
        text = _figures((_earned(quantity.value, quantity),), quantity.unit, "{}")
    elif quantity.low is not None and quantity.high is not None:
        text = _figures((quantity.low, quantity.high), quantity.unit, "{} to {}")
    elif quantity.low is not None:
        text = _figures((quantity.low,), quantity.unit, "at least {}")
    elif quantity.high is not None:
        text = _figures((quantity.high,), quantity.unit, "at most {}")
    else:
        joint = ", ".join("{}" for _ in quantity.one_of[:-1]) + " or {}" if len(quantity.one_of) > 1 else "{}"
        text = _figures(quantity.one_of, quantity.unit, joint)
    return text + _tolerance(quantity)


def accepted(quantity: Quantity) -> str:
    """What a good reading is: the quantity, and the range its tolerance allows."""
    low, high = shown_limits(quantity)
    if quantity.value is None or low is None or high is None or low == high:
        return in_words(quantity)
    return f"{in_words(quantity)}: {_figures((low, high), quantity.unit, '{} to {}', figure)}"


def limits(quantity: Quantity) -> tuple[float | None, float | None]:
    """Lowest and highest good reading, in the quantity's unit; None where it has no such limit."""
    if quantity.value is None:
        return quantity.low, quantity.high
    spread = quantity.plus_minus or 0.0
    if quantity.percent:
        spread = abs(quantity.value) * quantity.percent / 100
    return quantity.value - spread, quantity.value + spread


def shown_limits(quantity: Quantity) -> tuple[float | None, float | None]:
    """The same as a reader sees them, and as a reading is judged by."""
    low, high = limits(quantity)
    return None if low is None else _earned(low, quantity), None if high is None else _earned(high, quantity)


def _earned(value: float, quantity: Quantity) -> float:
    """The value to as many digits as its tolerance earns: three from one percent up, one more for each tenth of it."""
    if not quantity.percent:
        return value
    digits = 3 + max(0, -floor(log10(quantity.percent)))
    return float(f"{value:.{digits - 1}e}")


def _figures(values: tuple[float, ...], unit: str, form: str, say: Callable[[float], str] = stated) -> str:
    shown, shown_unit = readable(values, unit)
    text = with_unit(form.format(*(say(v) for v in shown)), shown_unit)
    converted = [other_system(v, shown_unit) for v in shown]
    if converted[0] is None:
        return text
    other_unit = converted[0][1]
    others = [rounded_other(pair[0], pair[1]) for pair in converted if pair]
    short = form.replace("at least ", "").replace("at most ", "")
    return f"{text} ({with_unit(short.format(*others), other_unit)})"


def _tolerance(quantity: Quantity) -> str:
    if quantity.percent:
        return f" ±{stated(quantity.percent)}\u00a0%"
    if quantity.plus_minus:
        return " ±" + with_unit(stated(quantity.plus_minus), quantity.unit)
    return ""
