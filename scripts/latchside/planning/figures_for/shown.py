"""Calculated figures as text, rounded to the safe side. The texts are cached, a bounded number of them."""

from __future__ import annotations

from functools import lru_cache
from math import ceil, floor, log10

from latchside.figures import rounding, words
from latchside.library.quantity import Quantity

_TINY = 1e-9


@lru_cache(maxsize=4096)
def say(value: float, unit: str, digits: int = 3) -> str:
    """A calculated figure with its unit, in both systems of units."""
    return rounding.say(value, unit, digits)


@lru_cache(maxsize=4096)
def in_words(quantity: Quantity) -> str:
    """A quantity with its unit, in both systems of units."""
    return words.in_words(quantity)


def up(value: float, step: float) -> float:
    """The next step at or above, without rounding errors in the last digits."""
    return float(f"{ceil(value / step - _TINY) * step:.12g}")


def down(value: float, step: float) -> float:
    """The next step at or below."""
    return float(f"{floor(value / step + _TINY) * step:.12g}")


def third_digit(value: float) -> float:
    """The step of the third digit, at least one: a reading that is good to some percent earns no more digits."""
    return float(10 ** max(0, floor(log10(value)) - 2)) if value > 1 else 1.0


def mm(value: float) -> str:
    """A length on the leaf."""
    return say(value, "mm")


def up_to(low: float | None, high: float | None, unit: str) -> str:
    """A range in words; a limit that is None does not bind."""
    return in_words(Quantity(unit, "computed", low=low, high=high)) if low != high else say(low or 0.0, unit, 4)
