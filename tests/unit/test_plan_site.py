"""What stands against the whole job, and names within what a keypad shows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import pytest

from latchside.planning.names import names
from latchside.planning.plan import Caution
from latchside.planning.short_names import Limit
from latchside.planning.site_problems import agreed_first, site_problems
from latchside.surveys.survey import ControlUnit, JobRules, Opening, Site

from .plans import codes, opening, survey

SITE = Site(keyholder_arranged=True, consent="owner", listed=False)
UNIT = ControlUnit(owner="customer", installer_access=True)
ROW = [opening("a", "Hall", "hinged-door")]


def test_a_site_that_is_in_order_has_no_problem() -> None:
    assert list(site_problems(survey(ROW, UNIT, SITE))) == []


@pytest.mark.parametrize(
    ("site", "unit", "problem"),
    [
        ({"keyholder_arranged": False}, {}, ("site", "no-keyholder")),
        ({"consent": "not-given"}, {}, ("site", "no-consent")),
        ({"listed": True}, {}, ("site", "listed-building")),
        ({}, {"owner": "other-firm"}, ("control-unit", "panel-of-another")),
        ({}, {"owner": "leased"}, ("control-unit", "panel-of-another")),
        ({}, {"installer_access": False}, ("control-unit", "no-installer-access")),
        ({}, {"installer_access": None}, ("control-unit", "installer-access-unknown")),
    ],
)
def test_what_stands_in_the_way_is_a_problem_with_something_to_do(
    site: Mapping[str, Any], unit: Mapping[str, Any], problem: tuple[str, str]
) -> None:
    found = tuple(site_problems(survey(ROW, replace(UNIT, **unit), replace(SITE, **site))))
    assert codes(found) == [problem]
    assert all(one.action for one in found)


def test_the_register_is_asked_for_where_an_old_building_is_drilled() -> None:
    """HSE: a building of before 2000 may hold asbestos, and the owner's register tells where."""
    old = survey(ROW, UNIT, replace(SITE, year_built=1934, monitored=False))
    drilled = Caution("asbestos", ("a",), "")
    (found,) = agreed_first(old, [drilled])
    assert (found.about, found.code) == ("site", "asbestos-register")
    assert "1934" in found.found
    assert list(agreed_first(old, [])) == []


@pytest.mark.parametrize(
    ("site", "months", "asked"),
    [
        ({"monitored": True}, None, True),
        ({"monitored": True, "grade": "grade-2"}, None, True),
        ({"monitored": True, "grade": "grade-1"}, None, False),
        ({"monitored": True}, 6, False),
        ({"monitored": False}, None, False),
        ({"monitored": True, "region": "united-states"}, None, False),
    ],
)
def test_visits_a_year_are_agreed_for_a_monitored_site(
    site: Mapping[str, Any], months: int | None, asked: bool
) -> None:
    """From memory: two visits a year are usual from grade 2."""
    of = survey(ROW, UNIT, replace(SITE, **{"region": "united-kingdom", **site}))
    found = agreed_first(replace(of, rules=JobRules(service_months=months)), [])
    assert [one.code for one in found] == (["visits-a-year"] if asked else [])


# -- names within a keypad -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "letters", "lines", "fits"),
    [
        ("Hall street door", 16, 1, True),
        ("Hall street doors", 16, 1, False),
        ("Bakehouse yard double door", 16, 2, True),  # Bakehouse yard / double door
        ("Hall front double door second leaf", 16, 2, False),  # three lines, no word broken
        ("Conservatory-annexe window", 16, 2, False),  # one word of 18
        ("", 8, 1, True),
    ],
)
def test_a_name_fits_in_whole_words(name: str, letters: int, lines: int, fits: bool) -> None:
    assert Limit(letters, lines).fits(name) is fits


def contact_names(limit: Limit, *row: Opening) -> list[tuple[str, ...]]:
    return [name.contacts for name in names(row, limit)]


def test_a_second_leaf_keeps_its_word_before_the_door_does() -> None:
    pair = opening("a", "Hall", "double-door", side="front", passive_leaf=True)
    assert contact_names(Limit(40), pair) == [("Hall front double door", "Hall front double door second leaf")]
    assert contact_names(Limit(16, 2), pair) == [("Hall front double door", "Hall front second leaf")]
    assert contact_names(Limit(16), pair) == [("Hall front door", "Hall second leaf")]
    long = opening("a", "Bakehouse", "double-door", side="yard", passive_leaf=True)
    assert contact_names(Limit(16), long) == [("Bakehouse door", "Bakehouse leaf 2")], "its place is still heard"


def test_made_names_leave_out_whole_words_and_stay_apart() -> None:
    row = [opening("a", "Kitchen", side="rear"), opening("b", "Kitchen", side="left"), opening("c", "Kitchen")]
    found = [name for name, *_ in contact_names(Limit(16), *row)]
    assert found == ["Kitchen rear", "Kitchen left", "Kitchen window"]
    assert len(set(found)) == 3


def test_a_name_of_the_survey_is_never_touched() -> None:
    long = opening("a", "Study", "double-hung", spoken="Study over the garden sash", upper_sash=True)
    assert contact_names(Limit(16), long) == [("Study over the garden sash", "Study upper sash")]
