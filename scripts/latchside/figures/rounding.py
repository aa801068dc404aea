"""Worked figures in running text: as many digits as the working is good for, in both systems of units."""

from __future__ import annotations

from math import ceil, floor

from latchside.figures.units import figure, upper_end, with_unit
from latchside.figures.words import in_words
from latchside.library.quantity import Quantity
from latchside.messages import messages

message = messages(__name__)


def rounded(value: float, digits: int = 3) -> float:
    """The value to so many digits."""
    return float(f"{value:.{digits - 1}e}")


def say(value: float, unit: str, digits: int = 3) -> str:
    """A worked figure with its unit, in both systems of units where they differ."""
    return in_words(Quantity(unit, "computed", rounded(value, digits)))


def short(value: float, unit: str, digits: int = 3) -> str:
    """A worked figure with its unit in one system, for a label or a narrow column."""
    return with_unit(figure(rounded(value, digits)), unit)


def between(low: float, high: float, unit: str) -> str:
    """A range of worked figures to a hundredth, widened to it, so that what is shown never promises too much."""
    least, most = floor(low * 100 + 1e-9) / 100, ceil(high * 100 - 1e-9) / 100
    if least == most:
        return with_unit(figure(least), unit)
    upper = upper_end(figure(least), with_unit(figure(most), unit))
    return message("between", low=figure(least), high=upper)
