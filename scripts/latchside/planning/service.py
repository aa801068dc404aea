"""What falls due after the job: services, cells and the standby battery. Dates are counted from the day of the job."""

from __future__ import annotations

from calendar import monthrange
from collections.abc import Iterable, Iterator
from datetime import date

from latchside.figures.words import in_words
from latchside.library.quantity import Quantity
from latchside.messages import messages
from latchside.planning.house import House, Rules
from latchside.planning.plan import OpeningPlan, Service

message = messages(__name__)
MOST_SERVICES = 12
"""At most this many services are listed: monthly visits need no list of four years."""


def later(on: date, months: int) -> date:
    """The same day `months` later, or the last day of that month where it is shorter."""
    year, month = divmod(on.year * 12 + on.month - 1 + months, 12)
    return date(year, month + 1, min(on.day, monthrange(year, month + 1)[1]))


def services(plans: Iterable[OpeningPlan], rules: Rules, house: House, on: date) -> tuple[Service, ...]:
    """All that falls due up to the change of the standby battery, and every cell, by date."""
    years = int(house["standby-years"])
    found = [*_visits(rules.service_months, years, on), *_cells(plans, on), _battery(years, house, on)]
    return tuple(sorted(found, key=lambda service: service.due))


def _visits(months: int, years: int, on: date) -> Iterator[Service]:
    every = in_words(Quantity("month", "common practice", months))
    for number in range(1, min(max(1, 12 * years // months), MOST_SERVICES) + 1):
        yield Service(later(on, number * months), "site", message("visit", every=every))


def _cells(plans: Iterable[OpeningPlan], on: date) -> Iterator[Service]:
    for plan in plans:
        months = change_months(plan)
        if months is not None:
            yield Service(later(on, months), plan.opening.id, message("cell", opening=plan.spoken))


def change_months(plan: OpeningPlan) -> int | None:
    """Whole months until the cell of an opening is changed, as its figure states them."""
    for line in plan.figures:
        if line.figure == "cell-life":
            months, years = line.inputs.get("change_months"), line.inputs.get("change_years")
            found = 12 * years if months is None and isinstance(years, int) else months
            if isinstance(found, int) and found > 0:
                return found
    return None


def _battery(years: int, house: House, on: date) -> Service:
    life = in_words(house.quantity("standby-years"))
    return Service(later(on, 12 * years), "control-unit", message("standby-battery", life=life))
