"""The firm's own figures: what is planned with where a survey says nothing else."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from latchside.jobs.survey import JobRules
from latchside.library.model import Library
from latchside.library.quantity import Quantity, quantity

TABLE = "house-rules"


@dataclass(frozen=True)
class House:
    """House rules by name, each in the unit that its record states."""

    values: Mapping[str, Mapping[str, Any]]

    def __getitem__(self, name: str) -> float:
        return float(self.values[name]["value"])

    def quantity(self, name: str) -> Quantity:
        """A rule with its unit, for words."""
        return quantity(self.values[name])


@dataclass(frozen=True)
class Rules:
    """The rules of one job: those of its survey, and the firm's where it has none."""

    spare_percent: float
    day_minutes: int
    technicians: int
    cable_spare_m: float
    service_months: int


def house_of(library: Library) -> House:
    """The house rules of a library. Raises LookupError where it has no sound record of them."""
    record = library.find("table", TABLE)
    if record is None:
        raise LookupError(f"table/{TABLE} is missing or not sound")
    return House(record["values"])


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
