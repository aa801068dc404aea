"""A quantity in its shortest form, in parts: for where its figure is the loudest word and one system of units fits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from latchside.figures.units import IMPERIAL, other_system, readable, rounded_other, stated, symbol
from latchside.figures.words import other_tolerance, tolerance
from latchside.library.quantity import Quantity
from latchside.messages import messages

message = messages(__name__)


@dataclass(frozen=True)
class Brief:
    """The figure, the sign of its unit, and its tolerance; the last two may be empty.

    `other` is the same in the other system of units, None where both use the same; `imperial` says which one this is.
    """

    figure: str
    unit: str
    tolerance: str = ""
    other: Brief | None = None
    imperial: bool = False


def brief(quantity: Quantity) -> Brief:
    """The quantity in the unit of its record: 3–9 mm, ≤ 6 years, 18.5 mm ±10 %."""
    values, unit = readable(tuple(_values(quantity)), quantity.unit)
    figures = [stated(value) for value in values]
    sign = symbol(unit, one=figures == ["1"])
    spread, other = _spread(quantity, tolerance(quantity)), _other(quantity, values, unit)
    return Brief(_figure(quantity, figures), sign, spread, other, imperial=unit in IMPERIAL)


def _other(quantity: Quantity, values: Sequence[float], unit: str) -> Brief | None:
    converted = [pair for value in values if (pair := other_system(value, unit))]
    if not converted:
        return None
    figures = [rounded_other(value, of) for value, of in converted]
    spread = _spread(quantity, other_tolerance(quantity))
    return Brief(_figure(quantity, figures), symbol(converted[0][1]), spread, imperial=unit not in IMPERIAL)


def _values(quantity: Quantity) -> list[float]:
    given = (quantity.value, quantity.low, quantity.high, *quantity.one_of)
    return sorted(value for value in given if value is not None)


def _figure(quantity: Quantity, figures: list[str]) -> str:
    if len(figures) > 1:
        return message("range", low=figures[0], high=figures[-1])
    if quantity.value is not None:
        return figures[0]
    return message("at-least" if quantity.low is not None else "at-most", figure=figures[0])


def _spread(quantity: Quantity, tolerance: str) -> str:
    """The tolerance, with how many figures there are to choose from where there are several."""
    tolerance, count = tolerance.strip(), len(quantity.one_of)
    if count < 2:
        return tolerance
    return message("one-of-within", count=count, tolerance=tolerance) if tolerance else message("one-of", count=count)
