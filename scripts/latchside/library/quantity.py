"""A number with its unit, its tolerance and where it comes from: the one shape every figure of a record has."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Quantity:
    """A figure as a record states it. At least one of `value`, `low`, `high`, `one_of` is there."""

    unit: str
    status: str
    value: float | None = None
    low: float | None = None
    high: float | None = None
    one_of: tuple[float, ...] = ()
    percent: float | None = None
    plus_minus: float | None = None
    condition: str | None = None
    source: str | None = None
    label: str | None = None


def quantity(data: Mapping[str, Any]) -> Quantity:
    """The quantity that a record's mapping states."""
    tolerance = data.get("tolerance", {})
    return Quantity(
        unit=data["unit"],
        status=data["status"],
        value=data.get("value"),
        low=data.get("min"),
        high=data.get("max"),
        one_of=tuple(data.get("one_of", ())),
        percent=tolerance.get("percent"),
        plus_minus=tolerance.get("plus_minus"),
        condition=data.get("condition"),
        source=data.get("source"),
        label=data.get("label"),
    )
