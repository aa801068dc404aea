"""Dates of services: months without a clock, and never a day that no calendar has."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from dateutil.relativedelta import relativedelta  # type: ignore[import-untyped]
from hypothesis import given
from hypothesis import strategies as st

from latchside.library import Library
from latchside.planning.house import rules_of
from latchside.planning.plan import Line, Service
from latchside.planning.service import MOST_SERVICES, later, services
from latchside.project import Checked
from latchside.surveys.survey import JobRules

from .plans import SURFACE, at, house, opening, plans


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


@pytest.mark.parametrize(
    ("on", "months", "due"),
    [
        (date(2026, 1, 31), 1, date(2026, 2, 28)),
        (date(2028, 1, 31), 1, date(2028, 2, 29)),
        (date(2024, 2, 29), 12, date(2025, 2, 28)),
        (date(2024, 2, 29), 48, date(2028, 2, 29)),
        (date(2096, 2, 29), 48, date(2100, 2, 28)),  # no leap year
        (date(2026, 12, 15), 1, date(2027, 1, 15)),
        (date(2026, 8, 31), 6, date(2027, 2, 28)),
        (date(2026, 3, 5), 0, date(2026, 3, 5)),
    ],
)
def test_the_end_of_a_month_stays_the_end(on: date, months: int, due: date) -> None:
    assert later(on, months) == due


@given(st.dates(max_value=date(2900, 1, 1)), st.integers(0, 600))
def test_months_are_counted_as_a_calendar_library_counts_them(on: date, months: int) -> None:
    assert later(on, months) == on + relativedelta(months=months)


def made(
    library: Library, on: date, months: int | None = None, inputs: Mapping[str, Any] | None = None
) -> tuple[Service, ...]:
    cell = Line("Cell", "", "none", "", "cell-life", {} if inputs is None else inputs)
    found = plans(at(library, [opening("a", "Hall")], [SURFACE]), {"a": [cell]})
    firm = house(library)
    return services(found, rules_of(JobRules(service_months=months), firm), firm, on)


def test_services_are_yearly_up_to_the_change_of_the_standby_battery(library: Library) -> None:
    found = made(library, date(2026, 5, 31))
    assert [(one.due, one.about) for one in found] == [
        (date(2027, 5, 31), "site"),
        (date(2028, 5, 31), "site"),
        (date(2029, 5, 31), "site"),
        (date(2030, 5, 31), "site"),
        (date(2030, 5, 31), "control-unit"),
    ]


def test_the_surveys_months_win(library: Library) -> None:
    visits = [one.due for one in made(library, date(2026, 8, 31), 6) if one.about == "site"]
    assert visits[:3] == [date(2027, 2, 28), date(2027, 8, 31), date(2028, 2, 29)]
    assert len(visits) == 8


@pytest.mark.parametrize(("months", "visits"), [(1, MOST_SERVICES), (60, 1)])
def test_a_list_of_services_is_neither_endless_nor_empty(library: Library, months: int, visits: int) -> None:
    assert sum(one.about == "site" for one in made(library, date(2026, 1, 1), months)) == visits


@pytest.mark.parametrize(
    ("inputs", "due"),
    [
        ({"change_years": 3}, date(2027, 2, 28)),
        ({"change_years": 3, "change_months": 36}, date(2027, 2, 28)),
        ({"change_months": 7}, date(2024, 9, 29)),
    ],
)
def test_cells_have_the_date_of_their_figure(library: Library, inputs: dict[str, Any], due: date) -> None:
    found = made(library, date(2024, 2, 29), inputs=inputs)
    assert [one.due for one in found if one.about == "a"] == [due]


@pytest.mark.parametrize("inputs", [{}, {"change_years": None}, {"change_months": 0}, {"change_years": "5"}])
def test_a_cell_that_could_not_be_worked_has_no_date(library: Library, inputs: dict[str, Any]) -> None:
    assert all(one.about != "a" for one in made(library, date(2026, 1, 1), inputs=inputs))


def test_dates_come_in_order(library: Library) -> None:
    due = [one.due for one in made(library, date(2026, 1, 31), 5, {"change_years": 1})]
    assert due == sorted(due)


def test_the_firms_own_years_count(library: Library) -> None:
    firm = house(library)
    other = replace(firm, values={**firm.values, "standby-years": {**firm.values["standby-years"], "value": 2}})
    found = services((), rules_of(JobRules(), other), other, date(2026, 1, 31))
    assert found[-1].due == date(2028, 1, 31)
