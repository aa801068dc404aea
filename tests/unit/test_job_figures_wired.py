"""The loop of an opening: readings by layout, cable that is never shorter than it is, and nothing from a guess."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from math import inf
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.library import Library
from latchside.planning.opening_figures import opening_figures
from latchside.project import Checked
from latchside.surveys.survey import ControlUnit, JobRules, Opening, Site, Survey
from tests.published.circuits import meter, single

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
    ("layout", "second", "shut", "open_"),
    [
        ("none", None, (0.0, 10.0), (1e6, None)), ("series", None, (2090.0, 2320.0), (1e6, None)),
        ("parallel", None, (0.0, 10.0), (2090.0, 2320.0)), ("double", 2200.0, (2090.0, 2320.0), (4180.0, 4630.0)),
        ("double", 4700.0, (2090.0, 2320.0), (6550.0, 7260.0)),
        ("double-across", 2200.0, (1040.0, 1170.0), (2090.0, 2320.0)),
        ("double-across", 4700.0, (1420.0, 1590.0), (4460.0, 4950.0)),
    ],
)  # fmt: skip
def test_readings_by_layout(library: Library, layout: str, second: float | None, shut: object, open_: object) -> None:
    """2200 ohm and the second one within 5 %, and at most 10 ohm of contact and leads, to three digits outward."""
    found = expected(library, replace(UNIT, layout=layout, second_resistor_ohm=second))
    assert found["loop-shut"] == shut
    assert found["loop-open"] == open_
    assert found["loop-short"] == (None, 10.0)


@pytest.mark.parametrize("layout", ["none", "series", "parallel", "double", "double-across"])
@pytest.mark.parametrize(("end", "second"), [(2200.0, 2200.0), (1000.0, 1000.0), (4700.0, 12000.0), (10000.0, 3300.0)])
@pytest.mark.parametrize("length", [1.0, 40.0, 300.0])
def test_a_good_loop_is_inside_what_is_expected(
    library: Library, layout: str, end: float, second: float, length: float
) -> None:
    """Each layout as it is wired, its resistors at both ends of 5 %, copper by NBS Handbook 100, by its node matrix."""
    unit = replace(UNIT, layout=layout, end_of_line_ohm=end, second_resistor_ohm=second)
    found = expected(library, unit, cable_length_m=length, cable_area_mm2=0.22)
    leads = 2 * length * 0.017241 / 0.22
    wired = {"parallel": "across"}.get(layout, layout)
    for tolerance, closed in product((0.95, 1.0, 1.05), (True, False)):
        parts = single(wired, closed=closed, series=tolerance * end, across=tolerance * second, core=leads / 2)
        low, high = found["loop-shut" if closed else "loop-open"]
        assert low <= meter(parts) <= (high or inf)


@pytest.mark.parametrize(("layout", "known"), [("double", {"loop-shut"}), ("double-across", set())])
def test_a_second_resistor_that_nobody_named_is_not_guessed(library: Library, layout: str, known: set[str]) -> None:
    unit = replace(UNIT, layout=layout, second_resistor_ohm=None)
    assert {"loop-shut", "loop-open"} & expected(library, unit).keys() == known
    found = lines(library, unit)["Loop reading"]
    assert found.verdict == "test on site"
    assert any("second resistor" in one for one in found.assumed)


@pytest.mark.parametrize("unit", [ControlUnit(layout="series"), ControlUnit(end_of_line_ohm=1000.0), ControlUnit()])
def test_no_value_is_expected_of_a_resistor_that_nobody_named(library: Library, unit: ControlUnit) -> None:
    known = {"loop-open"} if unit.layout else set()  # a series loop that is open reads open circuit, whatever its value
    assert {"loop-shut", "loop-open"} & expected(library, unit).keys() == known
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
    assert "Door open and pair cut read alike." in found.meaning
    assert found.verdict == "good"


def test_states_that_cannot_be_told_apart_are_poor(library: Library) -> None:
    """A resistor so small behind so large a pull-up that open with it reads as shut without it."""
    unit = replace(UNIT, layout="parallel", end_of_line_ohm=10.0, supply_v=5.0, pull_up_ohm=100000.0)
    assert lines(library, unit)["Input voltage"].verdict == "poor"


@pytest.mark.parametrize(
    ("length", "cable", "verdict"),
    [(20.0, False, "good"), (65.0, False, "good"), (250.0, False, "good"), (650.0, False, "test on site"),
     (800.0, False, "poor"), (20.0, True, "test on site"), (800.0, True, "poor"), (None, True, "test on site")],
)  # fmt: skip
def test_length_of_the_cable(library: Library, length: float | None, cable: bool, verdict: str) -> None:
    """2200 ohm within 5 % leave 110 ohm of a tenth: some 700 m of 0.22 mm2 by the handbook's copper, 590 m at worst."""
    said: dict[str, Any] = {"cable_length_m": length, "cable": cable, "cable_area_mm2": 0.22}
    assert lines(library, **said)["Cable"].verdict == verdict


def test_what_the_cable_adds_decides_and_no_fixed_length(library: Library) -> None:
    """65 m of 0.22 mm2 add 2 x 65 x 0.017241 / 0.22 = 10.2 ohm: nothing to a loop of 1 kohm."""
    unit = replace(UNIT, end_of_line_ohm=1000.0)
    assert lines(library, unit, cable_length_m=65.0, cable_area_mm2=0.22)["Cable"].verdict == "good"
    assert lines(library, unit, cable_length_m=380.0, cable_area_mm2=0.22)["Cable"].verdict == "poor"


def test_a_cable_that_fails_says_what_to_order(library: Library) -> None:
    found = lines(library, cable_length_m=800.0, cable_area_mm2=0.22)["Cable"]
    assert "Order cable of at least" in found.meaning
    need = float(found.meaning.split("at least ")[1].split("\u00a0")[0])
    assert lines(library, cable_length_m=800.0, cable_area_mm2=need)["Cable"].verdict == "good"


def test_a_resistor_that_is_not_known_fails_no_cable(library: Library) -> None:
    said: dict[str, Any] = {"cable_length_m": 800.0, "cable_area_mm2": 0.22}
    assert lines(library, ControlUnit(), **said)["Cable"].verdict == "test on site"
    assert lines(library, ControlUnit(layout="none"), **said)["Cable"].verdict == "poor"  # 100 ohm, by the house rules


def test_a_thin_cable_is_allowed_less(library: Library) -> None:
    """110 ohm / (2 x 172.41 x 1.028 x 1.16 ohm/km): about 267 m of 0.1 mm2."""
    assert lines(library, cable_area_mm2=0.1, cable_length_m=20.0)["Cable"].inputs["longest_m"] == 267.0


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


def test_the_house_counts_as_normal_what_the_table_does(library: Library) -> None:
    table = library.records["table"]["meter-readings"]
    assert house(library)["loop-band"] == table["values"]["normal-band"]["value"]
