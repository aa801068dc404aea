"""The radio of an opening: nothing in the way ever helps, and a verdict is never better than what is known."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.library import Library
from latchside.planning.house import house_of
from latchside.planning.plan import Line
from latchside.project import Checked
from latchside.surveys.survey import ControlUnit, Site, Wall

from .plans import SURFACE, TRANSMITTER
from .test_job_figures_openings import KNOWN, UNIT, US, figures_of

EUROPE = Site(region="europe")
UNIT_868 = replace(UNIT, frequency_mhz=868.3)
RANK = {"poor": 0, "test on site": 1, "good": 2}
MATERIALS = ["brick", "concrete", "plasterboard", "wood", "glass", "chipboard", "plywood", "foil", "metal"]
WALLS = st.lists(st.builds(Wall, st.sampled_from(MATERIALS), st.one_of(st.none(), st.floats(1, 500))), max_size=6)
UNITS = st.sampled_from([UNIT, UNIT_868, replace(UNIT, sensitivity_dbm=None), replace(UNIT, frequency_mhz=None)])
SITES = st.sampled_from([US, EUROPE, Site(), Site(region="canada"), Site(region="united-kingdom")])


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def margin(library: Library, unit: ControlUnit = UNIT, site: Site = US, id_: str = SURFACE, **said: Any) -> Line:
    found = figures_of(library, id_, unit, site, **{**KNOWN, **said})[0]
    return next(one for one in found if one.name == "Radio margin")


def test_a_short_way_of_which_all_is_known_is_good(library: Library) -> None:
    assert margin(library).verdict == "good"
    assert margin(library, UNIT_868, EUROPE).verdict == "good"


def test_hopeless_is_poor(library: Library) -> None:
    assert margin(library, distance_m=5000.0, outer_wall="efficient", floors=3).verdict == "poor"


@pytest.mark.parametrize("material", ["foil", "metal", "plywood"])
def test_foil_metal_and_plywood_are_never_good(library: Library, material: str) -> None:
    found = margin(library, UNIT_868, EUROPE, distance_m=1.0, walls=(Wall(material, 1.0),))
    assert found.verdict == "test on site"
    assert found.shown.startswith("nothing") == (material == "metal")


@pytest.mark.parametrize(
    ("frequency", "region", "verdict"),
    [(433.92, "united-states", "good"), (868.3, "united-states", "poor"), (315.0, "europe", "poor"),
     (315.0, "united-states", "good"), (868.3, "united-kingdom", "good"), (915.0, "united-states", "poor"),
     (2400.0, "europe", "poor"), (433.0, "united-states", "test on site"), (868.0, "europe", "test on site"),
     (None, "united-states", "test on site"), (433.92, None, "test on site"), (868.3, None, "test on site")],
)  # fmt: skip
def test_frequency_and_region(library: Library, frequency: float | None, region: str | None, verdict: str) -> None:
    found = margin(library, replace(UNIT, frequency_mhz=frequency), Site(region=region))
    assert found.verdict == verdict
    if verdict == "poor":
        assert found.shown == "not heard"


def test_an_unknown_sensitivity_is_said_and_never_good(library: Library) -> None:
    found = margin(library, replace(UNIT, sensitivity_dbm=None))
    assert found.verdict == "test on site"
    assert any("typical" in one for one in found.assumed)


@pytest.mark.parametrize("field", ["walls", "floors", "distance_m"])
def test_what_is_not_known_of_the_way_is_tried(library: Library, field: str) -> None:
    said: dict[str, Any] = {field: None}
    assert margin(library, **said).verdict == "test on site"


UNMEASURED = st.sampled_from(["brick", "concrete", "plasterboard", "wood", "glass", "chipboard"])


@given(unit=st.sampled_from([UNIT, UNIT_868]), material=UNMEASURED, share=st.floats(0.6, 1.85))
def test_a_wall_that_nobody_measured_holds_every_wall_it_may_be(
    shipped: Checked, unit: ControlUnit, material: str, share: float
) -> None:
    """A quarter to twice the house's figure, from the thinnest to the thickest."""
    site = US if unit is UNIT else EUROPE
    house = float(house_of(shipped.library)[f"wall-{material}"])
    unknown, known = (
        margin(shipped.library, unit, site, walls=(Wall(material, one),)) for one in (None, share * house)
    )
    _within(unknown, known)
    assert any("nobody measured" in one for one in unknown.assumed)


@given(
    unit=st.sampled_from([UNIT, UNIT_868]), material=UNMEASURED, whole=st.integers(1, 40), off=st.floats(-0.5, 0.5),
    step=st.sampled_from([10.0, 25.4, 12.7]),
)  # fmt: skip
def test_a_thickness_read_to_the_centimetre_or_inch_holds_every_thickness_it_may_be(
    shipped: Checked, unit: ControlUnit, material: str, whole: int, off: float, step: float
) -> None:
    """`off` is what the reading may be away from the wall, in the unit to which it was read."""
    site = US if unit is UNIT else EUROPE
    read, true = (
        margin(shipped.library, unit, site, walls=(Wall(material, one),))
        for one in (whole * step, (whole + off) * step)
    )
    low, high = (read.inputs[name] for name in ("low_margin_db", "high_margin_db"))
    assert low <= high
    if not (true.assumed and any("millimetre" in one for one in true.assumed)):
        _within(read, true)


def _within(wide: Line, narrow: Line) -> None:
    """The margins of one lie within those of the other, but for the steps in which thicknesses are tried."""
    assert wide.inputs["low_margin_db"] <= narrow.inputs["low_margin_db"] + 0.02
    assert wide.inputs["high_margin_db"] >= narrow.inputs["high_margin_db"] - 0.02


@pytest.mark.parametrize("floors", [1, 2, 3, 4, 6])
@pytest.mark.parametrize("unit", [UNIT, UNIT_868])
def test_an_unknown_building_holds_every_kind_of_building(library: Library, unit: ControlUnit, floors: int) -> None:
    site = US if unit is UNIT else EUROPE
    unknown = margin(library, unit, replace(site, building=None), floors=floors)
    other = margin(library, unit, replace(site, building="other"), floors=floors)
    for building in ("home", "flats", "office", "shop", "workshop"):
        known = margin(library, unit, replace(site, building=building), floors=floors)
        _within(unknown, known)
        _within(other, known)


@pytest.mark.parametrize(("distance", "verdict"), [(5.0, "good"), (1500.0, "test on site"), (5000.0, "poor")])
def test_below_the_margin_to_accept_in_every_spot_is_poor(library: Library, distance: float, verdict: str) -> None:
    """In a good spot 12.15 - 94.7 - 9 - 10 + 105 + 10 = 13.4 dB at 1.5 km; at 5 km 105.2 for 94.7, so 3 dB."""
    found = margin(library, UNIT_868, replace(EUROPE, building="office"), distance_m=distance, floors=1)
    assert found.verdict == verdict
    if verdict == "poor":
        assert 0 < found.inputs["high_margin_db"] < found.inputs["accept_db"]


def test_what_is_poor_says_what_to_order_or_change(library: Library) -> None:
    far = margin(library, distance_m=5000.0, outer_wall="efficient", floors=3)
    other = margin(library, replace(UNIT, frequency_mhz=915.0))
    for line in (far, other):
        assert line.verdict == "poor"
        assert "receiver" in line.meaning
        assert "wire the opening" in line.meaning


def test_canada_has_its_own_source(library: Library) -> None:
    found = margin(library, UNIT, Site(region="canada"))
    assert any("RSS-210" in one for one in found.assumed)
    assert not any("United States" in one for one in found.assumed)


def test_metal_behind_the_body_costs_and_a_transmitter_stands_clear(library: Library) -> None:
    wood, steel = (margin(library, frame_material=one).inputs["low_margin_db"] for one in ("wood", "steel"))
    assert wood - steel == pytest.approx(6)
    wood, steel = (
        margin(library, id_=TRANSMITTER, frame_material=one).inputs["low_margin_db"] for one in ("wood", "steel")
    )
    assert wood == steel


def test_shown_figures_are_rounded_down(library: Library) -> None:
    found = margin(library)
    low, high = (int(one) for one in found.shown.removesuffix("\u00a0dB").split(" to "))
    assert low <= found.inputs["low_margin_db"] < low + 1
    assert high <= found.inputs["high_margin_db"] < high + 1


def _worse(shipped: Checked, unit: ControlUnit, site: Site, before: dict[str, Any], after: dict[str, Any]) -> None:
    one, other = (margin(shipped.library, unit, site, **said) for said in (before, after))
    assert RANK[other.verdict] <= RANK[one.verdict]
    for name in ("low_margin_db", "high_margin_db"):
        if name in one.inputs:
            assert other.inputs[name] <= one.inputs[name] + 1e-9


@given(
    unit=UNITS, site=SITES, near=st.floats(0, 3000), more=st.floats(0, 4000), walls=st.one_of(st.none(), WALLS),
    floors=st.one_of(st.none(), st.integers(0, 9)), outer=st.sampled_from([None, "no", "traditional", "efficient"]),
)  # fmt: skip
def test_more_distance_never_raises_the_margin(
    shipped: Checked, unit: ControlUnit, site: Site, near: float, more: float, walls: list[Wall] | None,
    floors: int | None, outer: str | None,
) -> None:  # fmt: skip
    way = {"walls": None if walls is None else tuple(walls), "floors": floors, "outer_wall": outer}
    _worse(shipped, unit, site, {**way, "distance_m": near}, {**way, "distance_m": near + more})


@given(
    unit=UNITS, site=SITES, distance=st.floats(1, 200), walls=WALLS, more=WALLS, floors=st.integers(0, 5),
    up=st.integers(0, 5),
)  # fmt: skip
def test_more_walls_or_floors_never_raise_the_margin(
    shipped: Checked, unit: ControlUnit, site: Site, distance: float, walls: list[Wall], more: list[Wall],
    floors: int, up: int,
) -> None:  # fmt: skip
    way = {"distance_m": distance, "floors": floors, "walls": tuple(walls)}
    _worse(shipped, unit, site, way, {**way, "walls": (*walls, *more)})
    _worse(shipped, unit, site, way, {**way, "floors": floors + up})
    for outer in ("traditional", "efficient"):
        _worse(shipped, unit, site, way, {**way, "outer_wall": outer})
