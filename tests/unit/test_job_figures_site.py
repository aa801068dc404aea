"""Figures of the site: a battery only from known currents, by the practice of the region, and all check-ins."""

from __future__ import annotations

import pytest

from latchside.figures.catalogue import catalogue
from latchside.library import Library
from latchside.planning.plan import Line, OpeningPlan
from latchside.planning.site_figures import site_figures
from latchside.project import Checked
from latchside.surveys.survey import ControlUnit, Site

from .plans import RECESSED, SURFACE, TRANSMITTER, at, opening, plans, survey
from .test_job_figures_openings import figures_of

FIGURES = catalogue()
UNIT = ControlUnit(standby_ma=120.0, alarm_ma=500.0)


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def battery(region: str | None, unit: ControlUnit = UNIT, grade: str | None = None) -> list[Line]:
    site = Site(region=region, grade=grade)
    found = site_figures(survey([opening("a", "Hall")], unit, site), (), FIGURES)
    return [one for one in found if one.figure == "standby-battery"]


@pytest.mark.parametrize(
    ("region", "sizes"),
    [("united-states", [1.2]), ("canada", [4.5]), ("europe", [2.1, 12]), ("united-kingdom", [2.1, 12]), (None, [2.1])],
)
def test_battery_by_region(region: str | None, sizes: list[float]) -> None:
    """120 mA and 500 mA for 15 min, times 1.25: 0.756 Ah at 4 h, 1.956 at 12 h, 3.756 at 24 h, 9.156 at 60 h."""
    found = battery(region)
    assert [one.shown.split("\u00a0")[0] for one in found] == [f"{size:g}" for size in sizes]
    assert all(one.assumed for one in found)
    if region in ("europe", "united-kingdom"):
        assert all("from memory" in one.meaning for one in found)
    if region is None:
        assert "not known" in found[0].assumed[-1]


@pytest.mark.parametrize(
    ("grade", "sizes"),
    [("none", [2.1]), ("grade-1", [2.1]), ("grade-2", [2.1]), ("grade-3", [12]), ("grade-4", [12])],
)
def test_battery_by_grade(grade: str, sizes: list[float]) -> None:
    found = battery("europe", grade=grade)
    assert [one.shown.split("\u00a0")[0] for one in found] == [f"{size:g}" for size in sizes]


def test_canada_is_not_the_united_states() -> None:
    (found,) = battery("canada")
    assert "CAN/ULC-S304" in found.meaning
    assert "United States" not in " ".join((found.meaning, *found.assumed))


@pytest.mark.parametrize("unit", [ControlUnit(), ControlUnit(standby_ma=100.0), ControlUnit(alarm_ma=100.0)])
def test_no_battery_from_a_current_nobody_knows(unit: ControlUnit) -> None:
    assert battery("europe", unit) == []


def test_no_single_battery_is_poor() -> None:
    found = battery("europe", ControlUnit(standby_ma=5000.0, alarm_ma=5000.0))
    assert found[-1].verdict == "poor"
    assert "no single battery" in found[-1].shown
    assert "Add a supply" in found[-1].meaning


def made(library: Library, device: str, kinds: list[str], **said: object) -> tuple[OpeningPlan, ...]:
    walked = [opening(f"o{number}", f"Room {number}", kind, **said) for number, kind in enumerate(kinds)]
    lines, _, _ = figures_of(library, device)
    return plans(at(library, walked, [device] * len(walked)), {one.id: lines for one in walked})


def check_ins(of: tuple[OpeningPlan, ...]) -> list[Line]:
    found = site_figures(survey([one.opening for one in of]), of, FIGURES)
    return [one for one in found if one.figure == "missed-check-in"]


def test_check_ins_count_every_radio_device(library: Library) -> None:
    """A passive leaf has a device of its own, and one transmitter carries both leaves on its loop."""
    assert check_ins(made(library, SURFACE, ["double-door"] * 3, passive_leaf=True))[0].inputs["devices"] == 6
    assert check_ins(made(library, TRANSMITTER, ["double-door"] * 3, passive_leaf=True))[0].inputs["devices"] == 3
    assert check_ins(made(library, RECESSED, ["hinged-door"] * 3)) == []


def test_check_ins_are_counted_at_the_slow_end(library: Library) -> None:
    """12 h hold 10 check-ins of 66 min: 0.9 x 0.1^10 x 525,960 / 66 a year for each device."""
    (found,) = check_ins(made(library, SURFACE, ["casement"] * 2))
    assert found.inputs["check_in_min"] == pytest.approx(66)
    assert "all 10 check-ins" in found.meaning
    assert found.verdict == "good"
    assert found.shown.startswith("rarer")
