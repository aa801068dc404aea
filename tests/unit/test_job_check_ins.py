"""Check-ins are judged by the grade of the site: what a device cannot promise is poor, what is not known never good."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from latchside.figures.catalogue import catalogue
from latchside.library import Library
from latchside.library.model import Record
from latchside.packs.view import JobView
from latchside.planning.make import make_plan
from latchside.planning.opening_figures import opening_figures
from latchside.planning.plan import Expected, Line
from latchside.planning.site_figures import site_figures
from latchside.project import Checked
from latchside.surveys.survey import Override, Site, Survey

from .plans import SURFACE, TRANSMITTER, at, opening, plans, schedule, survey
from .test_job_figures_openings import KNOWN, UNIT

FIGURES = catalogue()
ON = date(2026, 11, 25)
EUROPE = Site(region="europe")


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def every(library: Library, minutes: float, id_: str = SURFACE) -> Record:
    """The class with another time between check-ins on its label."""
    record = library.find("device", id_)
    assert record is not None
    stated = {"value": minutes, "unit": "min", "status": "typical"}
    return replace(record, _data={**record.data, "values": {**record["values"], "check-in": stated}})


def worked(
    device: Record, site: Site, two_way: bool | None = None
) -> tuple[tuple[Line, ...], tuple[Expected, ...], Survey]:
    of = survey([opening("a", "Hall", **KNOWN)], replace(UNIT, two_way=two_way), site)
    lines, expected, _ = opening_figures(of.openings[0], device, of, FIGURES, ON)
    return lines, expected, of


def check_ins(device: Record, site: Site, two_way: bool | None = None) -> Line:
    return next(one for one in worked(device, site, two_way)[0] if one.name == "Check-ins")


@pytest.mark.parametrize(
    ("grade", "minutes", "two_way", "verdict"),
    [
        # grade 2: a message every 120 min, three of them every 40, and none older than 20 min when the system is set
        ("grade-2", 66, False, "poor"), ("grade-2", 66, True, "poor"), ("grade-2", 66, None, "poor"),
        ("grade-2", 40, True, "good"), ("grade-2", 41, True, "poor"), ("grade-2", 40, False, "poor"),
        ("grade-2", 40, None, "test on site"), ("grade-2", 21, False, "poor"), ("grade-2", 20, False, "good"),
        ("grade-2", 20, None, "good"),
        # grade 1: 240 min, so every 80, and 60 min when set
        ("grade-1", 66, False, "poor"), ("grade-1", 66, True, "good"), ("grade-1", 60, False, "good"),
        ("grade-1", 66, None, "test on site"), ("grade-1", 81, True, "poor"),
        # grades 3 and 4: 100 s and 10 s
        ("grade-3", 15, True, "poor"), ("grade-3", 0.5, False, "good"), ("grade-4", 0.5, True, "poor"),
    ],
)  # fmt: skip
def test_verdict_by_grade(library: Library, grade: str, minutes: float, two_way: bool | None, verdict: str) -> None:
    """EN 50131-1, from memory: the times by grade. Three within the time, so that one that is lost shows no trouble."""
    found = check_ins(every(library, minutes), replace(EUROPE, grade=grade), two_way)
    assert found.verdict == verdict
    assert any("EN 50131-1" in one and "from memory" in one for one in found.assumed)
    if verdict == "poor":
        assert "wire the opening" in found.meaning.lower()


@pytest.mark.parametrize("site", [EUROPE, Site(region="united-kingdom"), Site()])
@pytest.mark.parametrize("minutes", [66, 10])
def test_an_unknown_grade_is_never_good(library: Library, site: Site, minutes: float) -> None:
    found = check_ins(every(library, minutes), site)
    assert found.verdict == "test on site"
    assert any("grade is not known" in one for one in found.assumed)


@pytest.mark.parametrize("site", [Site(region="united-states"), Site(region="canada"), replace(EUROPE, grade="none")])
def test_no_grade_asks_nothing(library: Library, site: Site) -> None:
    """12 h hold ten check-ins of 66 min."""
    lines, expected, _ = worked(every(library, 66), site)
    found = next(one for one in lines if one.name == "Check-ins")
    assert (found.verdict, found.shown) == ("none", "10 within 12\u00a0h")
    assert {"window-at-grade", "age-at-setting"}.isdisjoint(one.measure for one in expected)


def test_a_grade_counts_in_any_region(library: Library) -> None:
    assert check_ins(every(library, 66), Site(region="united-states", grade="grade-2")).verdict == "poor"


@pytest.mark.parametrize("id_", [SURFACE, TRANSMITTER])
def test_what_is_measured_is_what_the_grade_asks(library: Library, id_: str) -> None:
    record = library.find("device", id_)
    assert record is not None
    expected = {one.measure: one for one in worked(record, replace(EUROPE, grade="grade-2"), False)[1]}
    assert (expected["check-in"].low, expected["check-in"].high) == (None, 20)
    assert (expected["window-at-grade"].unit, expected["window-at-grade"].high) == ("min", 120)
    assert (expected["age-at-setting"].unit, expected["age-at-setting"].high) == ("min", 20)
    polled = {one.measure: one for one in worked(record, replace(EUROPE, grade="grade-2"), True)[1]}
    assert polled["check-in"].high == 40


@pytest.mark.parametrize(
    ("site", "shown"),
    [(replace(EUROPE, grade="grade-2"), "2\u00a0h"), (replace(EUROPE, grade="grade-1"), "4\u00a0h"),
     (replace(EUROPE, grade="grade-3"), "100\u00a0s"), (Site(region="united-states"), "12\u00a0h"),
     (EUROPE, "not known")],
)  # fmt: skip
def test_the_zone_list_says_the_window_of_the_grade(library: Library, site: Site, shown: str) -> None:
    found, _ = schedule(library, survey([opening("a", "Hall")], site=site), SURFACE)
    assert shown in found[0].supervision


def test_more_check_ins_take_more_of_the_cell(library: Library) -> None:
    """Every 20 min in the place of 54: 15 mA for 200 ms costs 2.5 uA, and 0.93 uA before."""
    record = library.find("device", SURFACE)
    assert record is not None
    averages: Mapping[str, Any] = {
        grade: next(one for one in worked(record, replace(EUROPE, grade=grade), False)[0] if one.name == "Battery")
        for grade in ("none", "grade-2", "grade-3")
    }
    more = averages["grade-2"].inputs["average_ua"] - averages["none"].inputs["average_ua"]
    assert more == pytest.approx(15000 * 0.2 / 1200 - 15000 * 0.2 / 3240, abs=0.01)
    assert averages["grade-3"].verdict == "poor"


@pytest.mark.parametrize(
    ("site", "verdict"),
    [(replace(EUROPE, grade="grade-2"), "poor"), (EUROPE, "test on site"), (replace(EUROPE, grade="none"), "good"),
     (Site(region="united-states"), "good")],
)  # fmt: skip
def test_one_check_in_a_window_is_trouble_for_the_whole_site(library: Library, site: Site, verdict: str) -> None:
    """66 min within 2 h: one try, lost one time in ten, some 717 times a year."""
    record = library.find("device", SURFACE)
    assert record is not None
    lines, _, of = worked(record, site)
    made = plans(at(library, list(of.openings), [SURFACE]), {"a": lines})
    (found,) = (one for one in site_figures(of, made, FIGURES) if one.figure == "missed-check-in")
    assert found.verdict == verdict
    if verdict == "poor":
        assert found.shown.startswith("720")
        assert "Order" in found.meaning


def test_a_class_that_checks_in_too_seldom_is_one_problem_that_names_its_openings(library: Library) -> None:
    """Grade 2 asks for more than a class can do at all of its openings alike: the lead orders another class once."""
    row = [opening(id_, place, **{**KNOWN, "cable": False}) for id_, place in (("a", "Hall"), ("b", "Attic"))]
    row.append(opening("c", "Study", override=Override(TRANSMITTER, "Its loop is there"), **KNOWN))
    made = make_plan(
        survey(row, replace(UNIT, two_way=False), Site(region="europe", grade="grade-2")), library, FIGURES, ON
    )
    told = [one for one in made.problems if one.found.startswith("Check-ins")]
    assert [(one.about, one.openings) for one in told] == [("site", ("a", "b")), ("c", ())]
    assert "Hall window and Attic window" in told[0].found
    view = JobView(made, None)  # type: ignore[arg-type]
    for id_ in "abc":
        assert any(one.found.startswith("Check-ins") for one in view.problems(id_)), "it stands on each sheet too"
        assert "1 problem" in view.open_words(id_)
