"""The loop of an opening: readings by layout, cable that is never shorter than it is, and nothing from a guess."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.jobs.opening_figures import opening_figures
from latchside.jobs.survey import ControlUnit, JobRules, Opening, Site, Survey
from latchside.library import Library
from latchside.project import Checked

from .plans import RECESSED, TRANSMITTER, house
from .test_job_figures_openings import FIGURES, KNOWN, ON, UNIT, US, device, figures_of


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def lines(library: Library, unit: ControlUnit = UNIT, site: Site = US, id_: str = RECESSED, **said: Any) -> Any:
    return {one.name: one for one in figures_of(library, id_, unit, site, **{**KNOWN, **said})[0]}


def expected(library: Library, unit: ControlUnit = UNIT, **said: Any) -> Any:
    return {one.measure: (one.low, one.high) for one in figures_of(library, RECESSED, unit, **{**KNOWN, **said})[1]}


@pytest.mark.parametrize(
    ("layout", "shut", "open_"),
    [
        ("none", (0.0, 10.0), (1e6, None)), ("series", (2090.0, 2320.0), (1e6, None)),
        ("parallel", (0.0, 10.0), (2090.0, 2320.0)), ("double", (2090.0, 2320.0), (4180.0, 4630.0)),
    ],
)  # fmt: skip
def test_readings_by_layout(library: Library, layout: str, shut: object, open_: object) -> None:
    """2200 ohm within 5 %, and at most 10 ohm of contact and leads."""
    found = expected(library, replace(UNIT, layout=layout))
    assert found["loop-shut"] == shut
    assert found["loop-open"] == open_
    assert found["loop-short"] == (None, 10.0)


@pytest.mark.parametrize("unit", [ControlUnit(layout="series"), ControlUnit(end_of_line_ohm=1000.0), ControlUnit()])
def test_no_value_is_expected_of_a_resistor_that_nobody_named(library: Library, unit: ControlUnit) -> None:
    assert not {"loop-shut", "loop-open"} & expected(library, unit).keys()
    found = lines(library, unit)["Loop reading"]
    assert found.verdict == "test on site"
    assert found.assumed
    assert "assumed" in found.shown


def test_a_plain_loop_needs_no_resistor(library: Library) -> None:
    assert expected(library, ControlUnit(layout="none"))["loop-shut"] == (0.0, 10.0)


def test_the_window_is_shown_only_where_supply_and_pull_up_are_known(library: Library) -> None:
    assert "Input voltage" not in lines(library)
    assert "Input voltage" not in lines(library, replace(UNIT, supply_v=5.0))
    assert "Input voltage" not in lines(library, ControlUnit(supply_v=5.0, pull_up_ohm=2200.0, layout="series"))
    found = lines(library, replace(UNIT, supply_v=5.0, pull_up_ohm=2200.0))["Input voltage"]
    assert "Leaf open and pair cut read alike." in found.meaning
    assert found.verdict == "good"


def test_states_that_cannot_be_told_apart_are_poor(library: Library) -> None:
    """A resistor so small behind so large a pull-up that open with it reads as shut without it."""
    unit = replace(UNIT, layout="parallel", end_of_line_ohm=10.0, supply_v=5.0, pull_up_ohm=100000.0)
    assert lines(library, unit)["Input voltage"].verdict == "poor"


@pytest.mark.parametrize(
    ("length", "cable", "verdict"),
    [(20.0, False, "good"), (48.0, False, "good"), (48.1, False, "poor"), (20.0, True, "test on site"),
     (51.0, True, "poor"), (None, True, "test on site")],
)  # fmt: skip
def test_length_of_the_cable(library: Library, length: float | None, cable: bool, verdict: str) -> None:
    """The label allows 50 m, and a new cable gets 2 m to spare."""
    assert lines(library, cable_length_m=length, cable=cable)["Cable"].verdict == verdict


def test_a_thin_cable_is_allowed_less(library: Library) -> None:
    """10 ohm / (2 x 172.41 x 1.028 x 1.16 ohm/km): about 24 m of 0.1 mm2."""
    assert lines(library, cable_area_mm2=0.1, cable_length_m=20.0)["Cable"].inputs["longest_m"] == 24.0
    assert lines(library, cable_area_mm2=0.1, cable_length_m=25.0)["Cable"].verdict == "poor"


def test_an_unmeasured_cable_gives_no_figure(library: Library) -> None:
    for said in ({"cable_length_m": None}, {"cable_awg": 40}):
        found = lines(library, **said)["Cable"]
        assert found.shown == "not worked"
        assert "loop_ohm" not in found.inputs


def test_the_size_of_an_existing_cable_is_assumed_aloud(library: Library) -> None:
    assert "existing cable" in lines(library, cable=True)["Cable"].assumed[0]
    assert lines(library, cable=True, cable_awg=22)["Cable"].assumed == ()
    assert lines(library)["Cable"].inputs["awg"] == 22
    assert lines(library, site=Site(region="europe"))["Cable"].inputs["area_mm2"] == 0.22


def test_spare_of_the_job_goes_before_that_of_the_house(library: Library) -> None:
    opening = Opening("o", "Hall", "hinged-door", **KNOWN)
    survey = Survey("s", "S", (opening,), site=US, control_unit=UNIT, rules=JobRules(cable_spare_m=5.0))
    found, _, _ = opening_figures(opening, device(library, RECESSED), survey, FIGURES, ON, house(library))
    assert next(one for one in found if one.name == "Cable").inputs["length_m"] == 25.0


def test_a_transmitter_goes_by_its_own_label(library: Library) -> None:
    found = lines(library, id_=TRANSMITTER)
    assert found["Loop at the terminals"].verdict == "none"
    assert "Cable" not in found


@given(length=st.floats(0.5, 400), more=st.floats(0, 100), area=st.sampled_from([0.22, 0.5, 1.0]))
def test_more_cable_is_never_less_ohm(shipped: Checked, length: float, more: float, area: float) -> None:
    long, short = (
        lines(shipped.library, cable_length_m=one, cable_area_mm2=area)["Cable"] for one in (length + more, length)
    )
    assert long.inputs["most_ohm"] >= short.inputs["most_ohm"] > short.inputs["loop_ohm"]
    assert short.inputs["length_m"] >= length + 2
    assert not (short.verdict == "poor" and long.verdict == "good")
