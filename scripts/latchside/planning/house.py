"""The firm's own figures, which hold where a survey says nothing else."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from latchside.library.model import Library
from latchside.library.quantity import Quantity, quantity
from latchside.surveys.survey import JobRules

TABLE = "house-rules"
LIMITS = "trip-limits"
"""The table of limits for the trip; its figures are looked up like those of the firm."""


@dataclass(frozen=True, eq=False)
class House:
    """House rules by name, each in the unit that its record states."""

    values: Mapping[str, Mapping[str, Any]]

    def __getitem__(self, name: str) -> float:
        return float(self.values[name]["value"])

    def quantity(self, name: str) -> Quantity:
        """A rule with its unit, to be shown."""
        return quantity(self.values[name])


@dataclass(frozen=True)
class Rules:
    """The rules of one job: those of its survey, and the firm's where it has none."""

    spare_percent: float
    day_minutes: int
    technicians: int
    cable_spare_m: float
    service_months: int


@lru_cache(maxsize=8)
def house_of(library: Library) -> House:
    """The house rules of a library. Raises LookupError where it has no sound record of them."""
    house = house_if_any(library)
    if house is None:
        raise LookupError(f"table/{TABLE} is missing or not sound")
    return house


def house_if_any(library: Library) -> House | None:
    """The house rules of a library, with its limits for the trip; None where it has no sound record of them."""
    record, limits = library.find("table", TABLE), library.find("table", LIMITS)
    if record is None:
        return None
    return House({**record["values"], **(limits["values"] if limits is not None else {})})


def rules_of(job: JobRules, house: House) -> Rules:
    """The rules that hold for a job."""

    def first(own: float | None, name: str) -> float:
        return house[name] if own is None else float(own)

    return Rules(
        spare_percent=first(job.spare_percent, "spare-percent"),
        day_minutes=int(first(job.day_minutes, "day-minutes")),
        technicians=int(first(job.technicians, "technicians")),
        cable_spare_m=first(job.cable_spare_m, "cable-spare"),
        service_months=int(first(job.service_months, "service-months")),
    )
