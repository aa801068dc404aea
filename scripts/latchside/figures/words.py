"""A quantity in words: the one way every number of the library is shown."""

from __future__ import annotations

from collections.abc import Callable
from math import floor, log10
from typing import NamedTuple

from latchside.figures.units import (
    IMPERIAL,
    figure,
    other_system,
    readable,
    rounded_other,
    stated,
    upper_end,
    with_unit,
)
from latchside.library.quantity import Quantity
from latchside.messages import listed, messages

message = messages(__name__)


class Both(NamedTuple):
    """A quantity in its own units and in the other system, which is None where both use the same."""

    text: str
    other: str | None
    imperial: bool
    """Whether its own units are inches, feet, pounds or degrees Fahrenheit."""


def in_words(quantity: Quantity) -> str:
    """The quantity in short: figure, unit, the other system in brackets, tolerance."""
    limit, pair = _figures_of(quantity)
    return _limited(limit, _bracketed(pair)) + tolerance(quantity)


def in_both(quantity: Quantity) -> Both:
    """The quantity in each system of units by itself."""
    limit, (own, other) = _figures_of(quantity)
    imperial = quantity.unit in IMPERIAL
    if other is None:
        return Both(in_words(quantity), None, imperial)
    return Both(
        _limited(limit, own) + tolerance(quantity), _limited(limit, other) + other_tolerance(quantity), imperial
    )


Pair = tuple[str, str | None]
"""Figures in their own unit, and in that of the other system."""


def _figures_of(quantity: Quantity) -> tuple[str, Pair]:
    """The figures, and the message that says which limit they are, if they are one."""
    if quantity.value is not None:
        return "", _figures((_earned(quantity.value, quantity),), quantity.unit)
    if quantity.low is not None and quantity.high is not None:
        return "", _range((quantity.low, quantity.high), quantity.unit)
    if quantity.low is not None:
        return "at-least", _figures((quantity.low,), quantity.unit)
    if quantity.high is not None:
        return "at-most", _figures((quantity.high,), quantity.unit)
    return "", _figures(quantity.one_of, quantity.unit, _alternatives)


def _limited(limit: str, figure: str) -> str:
    return message(limit, figure=figure) if limit else figure


def _bracketed(pair: Pair) -> str:
    own, other = pair
    return own if other is None else f"{own} ({other})"


def accepted(quantity: Quantity) -> str:
    """What a good reading is: the quantity, and the range its tolerance allows."""
    low, high = shown_limits(quantity)
    if quantity.value is None or low is None or high is None or low == high:
        return in_words(quantity)
    return f"{in_words(quantity)}: {_bracketed(_range((low, high), quantity.unit, figure))}"


def accepted_in_both(quantity: Quantity) -> Both:
    """What a good reading is, in each system of units by itself."""
    own, other, imperial = in_both(quantity)
    low, high = shown_limits(quantity)
    if other is None or quantity.value is None or low is None or high is None or low == high:
        return Both(accepted(quantity) if other is None else own, other, imperial)
    own_range, other_range = _range((low, high), quantity.unit, figure)
    return Both(f"{own}: {own_range}", f"{other}: {other_range}", imperial)


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


def _figures(
    values: tuple[float, ...],
    unit: str,
    together: Callable[[list[str]], str] = lambda figures: figures[0],
    say: Callable[[float], str] = stated,
) -> Pair:
    """Figures as one text, the unit once and behind the last; and the same in the other system."""
    readable_values, readable_unit = readable(values, unit)
    text = _with_unit([say(value) for value in readable_values], readable_unit, together)
    converted = [pair for value in readable_values if (pair := other_system(value, readable_unit))]
    if not converted:
        return text, None
    others = [rounded_other(value, other_unit) for value, other_unit in converted]
    return text, _with_unit(others, converted[0][1], together)


def _with_unit(figures: list[str], unit: str, together: Callable[[list[str]], str]) -> str:
    return together([*figures[:-1], with_unit(figures[-1], unit)])


def _range(ends: tuple[float, float], unit: str, say: Callable[[float], str] = stated) -> Pair:
    return _figures(ends, unit, lambda figures: message("range", low=figures[0], high=upper_end(*figures)), say)


def _alternatives(figures: list[str]) -> str:
    return listed(figures, "or")


def tolerance(quantity: Quantity) -> str:
    """The tolerance as it stands behind a figure; empty where there is none."""
    if quantity.percent:
        return f" ±{stated(quantity.percent)}\u00a0%"
    if quantity.plus_minus:
        return " ±" + with_unit(stated(quantity.plus_minus), quantity.unit)
    return ""


def other_tolerance(quantity: Quantity) -> str:
    """The tolerance in the other system; in its own unit where a difference does not convert as a value does."""
    if not quantity.plus_minus or quantity.unit in ("degC", "degF"):
        return tolerance(quantity)
    converted = other_system(quantity.plus_minus, quantity.unit)
    return " ±" + with_unit(rounded_other(*converted), converted[1]) if converted else tolerance(quantity)
