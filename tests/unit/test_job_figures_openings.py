"""Figures of an opening: every kind and class, nothing good on an assumption, and the safe side of every limit."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from itertools import product
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.catalogue import Figure, catalogue
from latchside.jobs.figures_for.context import Context, device_of
from latchside.jobs.figures_for.magnet import left
from latchside.jobs.figures_for.places import PLACES
from latchside.jobs.opening_figures import opening_figures
from latchside.jobs.plan import Expected, Fixing, Line
from latchside.jobs.survey import ControlUnit, Opening, Site, Survey
from latchside.library import Library
from latchside.library.model import Record
from latchside.project import Checked

from .plans import RECESSED, SURFACE, TRANSMITTER, house

ON = date(2026, 11, 25)
UNIT = ControlUnit(frequency_mhz=433.92, sensitivity_dbm=-105.0, end_of_line_ohm=2200.0, layout="series")
US = Site(region="united-states")
FIGURES = catalogue()
KNOWN: Mapping[str, Any] = {
    "gap_mm": 4.0, "play_mm": 1.0, "steel": "none", "leaf_material": "wood", "frame_material": "wood", "step_mm": 5.0,
    "distance_m": 10.0, "walls": (), "floors": 0, "outer_wall": "no", "openings_a_day": 20.0, "fire_rated": False,
    "escape": False, "drill": True, "cable": False, "cable_length_m": 20.0, "height_m": 1.5,
}  # fmt: skip


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def device(library: Library, id_: str) -> Record:
    found = library.find("device", id_)
    assert found is not None
    return found


def figures_of(
    library: Library, id_: str, unit: ControlUnit = UNIT, site: Site = US, on: date = ON, **said: Any
) -> tuple[tuple[Line, ...], tuple[Expected, ...], Fixing | None]:
    opening = Opening("o", "Hall", **{"kind": "hinged-door", **said})
    survey = Survey("s", "S", (opening,), site=site, control_unit=unit)
    return opening_figures(opening, device(library, id_), survey, FIGURES, on, house(library))


def line(library: Library, id_: str, name: str, **said: Any) -> Line:
    return next(one for one in figures_of(library, id_, **{**KNOWN, **said})[0] if one.name == name)


def values(library: Library, id_: str, **said: Any) -> dict[str, Expected]:
    return {one.measure: one for one in figures_of(library, id_, **{**KNOWN, **said})[1]}


def fixing(library: Library, id_: str, **said: Any) -> Fixing:
    found = figures_of(library, id_, **{**KNOWN, **said})[2]
    assert found is not None
    return found


def test_every_kind_has_a_place_and_nothing_unsaid(library: Library) -> None:
    for record in library.of("device"):
        for kind in record["openings"]:
            for said in ({}, KNOWN):
                lines, expected, fixed = figures_of(library, record.id, **{**said, "kind": kind})
                assert fixed is not None
                text = " ".join(map(str, (fixed, *(f"{one.shown} {one.meaning} {one.assumed}" for one in lines))))
                assert not {"None", "nan", "inf"} & set(text.replace("(", " ").replace(")", " ").split())
                assert "Never drilled" in fixed.hold or not PLACES[kind].never
                assert len({one.measure for one in expected}) == len(expected)


def test_an_opening_of_which_all_is_known_is_good(library: Library) -> None:
    for id_ in (SURFACE, RECESSED):
        lines, _, _ = figures_of(library, id_, **KNOWN)
        assert {one.verdict for one in lines} <= {"good", "none"}


def test_nothing_is_good_that_rests_on_what_nobody_said(library: Library) -> None:
    """All fields left open: no verdict is good, and each figure says what it takes."""
    for id_ in (SURFACE, RECESSED, TRANSMITTER):
        lines, _, _ = figures_of(library, id_, unit=ControlUnit(), site=Site())
        assert "good" not in {one.verdict for one in lines}


@pytest.mark.parametrize(
    ("missing", "name"),
    [("gap_mm", "Gap and reach"), ("play_mm", "Gap and reach"), ("step_mm", "Spacer"), ("floors", "Radio margin"),
     ("walls", "Radio margin"), ("distance_m", "Radio margin"), ("openings_a_day", "Cell")],
)  # fmt: skip
def test_a_field_left_open_takes_the_good_away(library: Library, missing: str, name: str) -> None:
    assert line(library, SURFACE, name).verdict == "good"
    assert line(library, SURFACE, name, **{missing: None}).verdict in ("test on site", "none")


@pytest.mark.parametrize(
    ("gap", "play", "steel", "verdict"),
    [
        (4.0, 1.0, "none", "good"), (9.0, 1.0, "none", "good"), (9.1, 1.0, "none", "test on site"),
        (2.0, 1.0, "none", "test on site"), (19.0, 0.0, "none", "poor"), (18.0, 0.8, "none", "test on site"),
        (4.0, 1.0, "both", "good"), (5.0, 1.0, "both", "test on site"), (9.0, 1.0, "both", "poor"),
        (4.0, 1.0, "unknown", "good"), (6.0, 1.0, "unknown", "test on site"), (19.0, 1.0, "unknown", "poor"),
    ],
)  # fmt: skip
def test_gap_and_play(library: Library, gap: float, play: float, steel: str, verdict: str) -> None:
    """Half of the reach is 10.5 mm in air, and the label fits to 10; on steel half of 11 is 5.5."""
    assert line(library, SURFACE, "Gap and reach", gap_mm=gap, play_mm=play, steel=steel).verdict == verdict


def test_a_steel_leaf_is_steel_whatever_else_is_said(library: Library) -> None:
    assert line(library, SURFACE, "Gap and reach", gap_mm=6.0, leaf_material="steel").verdict == "test on site"


@pytest.mark.parametrize(
    ("play", "steel", "verdict"),
    [(0.0, "none", "good"), (2.5, "none", "good"), (2.6, "none", "test on site"), (4.0, "none", "poor"),
     (1.3, "both", "good"), (2.0, "both", "test on site"), (2.1, "both", "poor")],
)  # fmt: skip
def test_play_against_the_lost_motion(library: Library, play: float, steel: str, verdict: str) -> None:
    """Lost motion 26 - 21 = 5 mm in air, and 5 x 11 / 21 = 2.62 mm on steel."""
    found = line(library, SURFACE, "Play against lost motion", play_mm=play, steel=steel)
    assert found.verdict == verdict
    assert ("mended first" in found.meaning) == (verdict != "good")


@pytest.mark.parametrize(
    ("step", "shown", "verdict"),
    [(0.0, "one spacer", "good"), (5.0, "two spacers", "good"), (-5.0, "no spacer", "good"), (7.0, "two", "good"),
     (7.1, "two", "poor"), (-15.0, "two spacers", "good"), (60.0, "beyond", "poor")],
)  # fmt: skip
def test_spacer(library: Library, step: float, shown: str, verdict: str) -> None:
    found = line(library, SURFACE, "Spacer", step_mm=step)
    assert found.shown.startswith(shown)
    assert found.verdict == verdict
    assert ("under the sensor" in found.shown) == (step == -15.0)


def test_reach_on_steel_is_worked_where_no_label_states_it(library: Library) -> None:
    """By the image method, which leaves about a half."""
    record = device(library, SURFACE)
    bare = {name: one for name, one in record["values"].items() if name != "reach-on-steel"}
    without = replace(record, data={**record.data, "values": bare})
    opening = Opening("o", "Hall", "hinged-door")
    context = Context(opening, device_of(without), Survey("s", "S", (opening,)), FIGURES, ON)
    air, steel = left(context, steel=False), left(context, steel=True)
    assert 0.4 < steel.fit_to / 10.5 < 0.8
    assert steel.least < air.least
    assert steel.lost < air.lost


def test_a_contact_that_stays_is_not_drilled_nor_trusted_unseen(library: Library) -> None:
    assert line(library, RECESSED, "Gap and reach", old_contact=True).verdict == "test on site"
    assert "nothing is drilled" in fixing(library, RECESSED, old_contact=True).hold


def test_a_fire_rated_leaf_is_never_drilled(library: Library) -> None:
    for field, answer in product(("fire_rated", "escape"), (True, None)):
        for id_ in (SURFACE, RECESSED, TRANSMITTER):
            assert fixing(library, id_, **{field: answer}).hold.startswith("No hole")


@pytest.mark.parametrize(
    ("said", "words"),
    [({}, "Screws."), ({"drill": False}, "Pads"), ({"frame_material": "plastic"}, "Pads"),
     ({"leaf_material": "glass"}, "No hole in glass"), ({"frame_material": "steel"}, "a magnet does not pull"),
     ({"drill": None}, "asked for first")],
)  # fmt: skip
def test_hold(library: Library, said: Mapping[str, Any], words: str) -> None:
    assert words in fixing(library, SURFACE, **said).hold


@pytest.mark.parametrize(
    ("kind", "words"),
    [("hinged-door", "latch side"), ("roof-window", "lower edge"), ("tilt-and-turn", "top of the handle side"),
     ("double-hung", "never at the meeting rails"), ("sliding", "leading edge"), ("double-door", "each leaf")],
)  # fmt: skip
def test_sensor_on_the_fixed_part(library: Library, kind: str, words: str) -> None:
    fixed = fixing(library, SURFACE, kind=kind)
    assert words in fixed.sensor
    assert fixed.sensor.startswith("Sensor")
    assert fixed.magnet.startswith("Magnet on")


@pytest.mark.parametrize(
    ("height", "shown"),
    [(1.8, None), (1.9, "foot 0.5"), (3.0, "foot 0.8"), (14.5, "no leaning ladder")],
)
def test_ladder_above_the_height_of_the_house(library: Library, height: float, shown: str | None) -> None:
    lines, _, _ = figures_of(library, SURFACE, **{**KNOWN, "height_m": height})
    found = [one.shown for one in lines if one.name == "Ladder"]
    assert len(found) == (shown is not None)
    assert all(one.startswith(str(shown)) for one in found)


@pytest.mark.parametrize(
    ("uses", "id_", "years"), [(5.0, SURFACE, 6), (400.0, SURFACE, 2), (20.0, TRANSMITTER, 7), (5000.0, SURFACE, None)]
)
def test_cell_change_is_rounded_down_and_within_the_label(
    library: Library, uses: float, id_: str, years: int | None
) -> None:
    """At 400: 12 + 15 x 200 x 800 / 86,400 + 15 x 200 / (54 x 60) = 40.7 uA; 800 mAh / 40.7 uA = 2.2 years."""
    found = line(library, id_, "Cell", openings_a_day=uses)
    assert found.figure == "cell-life"
    assert found.inputs.get("change_years") == years
    assert found.inputs["change_months"] <= 12 * found.inputs["years"]
    if years:
        assert f"change by {ON.year + years}-11-25" in found.shown
    else:
        assert found.verdict == "poor"


def test_cell_of_a_leap_day(library: Library) -> None:
    lines, _, _ = figures_of(library, SURFACE, on=date(2028, 2, 29), **KNOWN)
    assert any("2034-02-28" in one.shown for one in lines)


def test_expected_values_go_by_the_names_of_the_checklists(library: Library) -> None:
    surface = values(library, SURFACE)
    assert set(surface) == {"fit-gap", "play", "trip", "radio-margin", "check-in", "cell-voltage"}
    assert (surface["fit-gap"].low, surface["fit-gap"].high) == (3, 10)
    assert (surface["check-in"].low, surface["check-in"].high) == (54, 66)
    assert surface["cell-voltage"].low == pytest.approx(2.7)
    assert set(values(library, RECESSED)) == {"fit-gap", "play", "trip", "loop-shut", "loop-open", "loop-short"}
    assert values(library, SURFACE, steel="both")["fit-gap"].high == 5.5


@given(
    use=st.floats(0, 10000), more=st.floats(0, 1000), gap=st.floats(10, 30), wider=st.floats(0, 10),
    play=st.floats(0, 6), steel=st.sampled_from([None, "none", "both"]),
)  # fmt: skip
def test_more_use_gap_or_play_is_never_better(
    shipped: Checked, use: float, more: float, gap: float, wider: float, play: float, steel: str | None
) -> None:
    library, rank = shipped.library, {"poor": 0, "test on site": 1, "none": 1, "good": 2}
    uses = min(use + more, 10000.0)
    busy, calm = (line(library, SURFACE, "Cell", openings_a_day=one).inputs["change_months"] for one in (uses, use))
    assert busy <= calm
    wide, near = (
        line(library, SURFACE, "Gap and reach", gap_mm=one, play_mm=play, steel=steel) for one in (gap + wider, gap)
    )
    assert rank[wide.verdict] <= rank[near.verdict]
    loose, tight = (
        line(library, SURFACE, "Play against lost motion", play_mm=one, steel=steel) for one in (play + wider, play)
    )
    assert rank[loose.verdict] <= rank[tight.verdict]


def test_the_same_opening_gives_the_same_figures(library: Library) -> None:
    fresh: Mapping[str, Figure] = catalogue()
    opening = Opening("o", "Hall", "hinged-door", **KNOWN)
    survey = Survey("s", "S", (opening,), site=US, control_unit=UNIT)
    made = [
        opening_figures(opening, device(library, SURFACE), survey, known, ON, house(library))
        for known in (FIGURES, fresh)
    ]
    assert made[0] == made[1]
