"""What a lead settles before the day: the grade that decides the radio, full positions, and places not heard."""

from __future__ import annotations

from dataclasses import replace

import pytest

from latchside.library import Library
from latchside.planning.failing import failing
from latchside.planning.hours import hours_asked
from latchside.planning.house import rules_of
from latchside.planning.plan import Line, OpeningPlan, Problem
from latchside.planning.position_doubts import positions_in_doubt
from latchside.planning.work import work
from latchside.planning.zones import zones
from latchside.project import Checked
from latchside.surveys.survey import ControlUnit, JobRules, Opening, Site

from .plans import RECESSED, SURFACE, at, codes, house, opening, plans, survey


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def check_ins(verdict: str, action: str) -> Line:
    return Line("Check-ins", "every 66 min, 20 asked", verdict, "", "missed-check-in", {}, (), action)  # type: ignore[arg-type]


def silent(reach: str = "poor") -> Line:
    return Line("Radio margin", "", reach, "", "radio-margin", {})  # type: ignore[arg-type]


def test_a_grade_that_would_fail_the_check_ins_is_one_problem_of_the_site(library: Library) -> None:
    """Common practice: whoever orders by a grade that nobody told orders twice."""
    row = [opening("a", "Hall"), opening("b", "Study"), opening("c", "Attic")]
    lines = {"a": [check_ins("test on site", "Order another.")], "b": [check_ins("test on site", "Order another.")]}
    made = plans(at(library, row, [SURFACE] * 3), {**lines, "c": [check_ins("good", "")]})
    (found,) = failing(made, ())
    assert (found.about, found.code) == ("site", "grade-not-known")
    assert "2 radio openings" in found.found
    assert "before anything is ordered" in found.action
    assert "Order another." in found.action
    assert not list(failing(plans(at(library, row, [SURFACE] * 3), {"a": [check_ins("test on site", "")]}), ()))


def doubts(library: Library, row: list[Opening], device: str, unit: ControlUnit, *reach: str) -> list[Problem]:
    lines = {one.id: [silent(how)] for one, how in zip(row, reach, strict=False)}
    made: tuple[OpeningPlan, ...] = plans(at(library, row, [device] * len(row)), lines)
    return list(positions_in_doubt(unit, made, zones(survey(row, unit), made, library)))


def test_a_second_sash_in_doubt_has_no_place_on_a_full_panel(library: Library) -> None:
    sash = opening("a", "Bedroom", "double-hung")
    full = ControlUnit(radio_positions=1)
    assert codes(doubts(library, [sash], SURFACE, full)) == [("a", "no-room-for-second")]
    assert doubts(library, [sash], SURFACE, ControlUnit(radio_positions=2)) == []
    assert doubts(library, [sash], SURFACE, ControlUnit()) == []
    assert doubts(library, [replace(sash, upper_sash=False)], SURFACE, full) == []
    assert codes(doubts(library, [sash], RECESSED, ControlUnit(wired_positions=1))) == [("a", "no-room-for-second")]


def test_a_free_wired_position_is_offered_to_the_nearest_place_not_heard(library: Library) -> None:
    row = [
        opening("gate", "Garden", "gate", distance_m=23.0),
        opening("roof", "Gallery", "roof-window", distance_m=12.0),
        opening("door", "Hall", "hinged-door", distance_m=3.0, fire_rated=True),
        opening("near", "Study", distance_m=2.0),
    ]
    reach = ("poor", "poor", "poor", "good")
    (found,) = doubts(library, row, SURFACE, ControlUnit(wired_positions=1), *reach)
    assert (found.about, found.code, found.openings) == ("control-unit", "wired-position-free", ("roof",))
    assert "Gallery" in found.action.split("cable to ")[1]
    assert doubts(library, row, SURFACE, ControlUnit(wired_positions=0), *reach) == []
    assert doubts(library, row, SURFACE, ControlUnit(wired_positions=1), "good", "good", "good", "good") == []


@pytest.mark.parametrize(
    ("site", "more", "asked"),
    [
        (Site(occupied=True), {"openings_a_day": 60}, True),
        (Site(occupied=True), {"openings_a_day": 60, "free": "any"}, False),
        (Site(occupied=True), {"openings_a_day": 6}, False),
        (Site(occupied=False), {"openings_a_day": 60}, False),
    ],
)
def test_hours_are_asked_only_of_a_busy_door_among_people(
    library: Library, site: Site, more: dict[str, object], asked: bool
) -> None:
    row = [opening("a", "Shop", "hinged-door", **more)]
    found = list(hours_asked(survey(row, None, site), at(library, row, [SURFACE])))
    assert [one.field for one in found] == (["free"] if asked else [])


def test_what_is_free_in_the_afternoon_is_not_begun_with(library: Library) -> None:
    """The bakery bakes until noon: its yard door cannot be the first job of the day."""
    row = [opening("yard", "Bakehouse", free="afternoon"), opening("a", "Study"), opening("b", "Attic", free="morning")]
    firm = house(library)
    done = work(at(library, row, [SURFACE] * 3), {}, 0, library, firm, rules_of(JobRules(), firm))
    assert list(done.of_opening) == ["b", "a", "yard"]
    assert "in the afternoon only" in done.of_opening["yard"][0].words
    assert "only" not in done.of_opening["a"][0].words.replace("Begin only", "")
