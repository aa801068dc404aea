"""Figures of an opening: every kind and class, nothing good on an assumption, and the safe side of every limit."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from itertools import product
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.figures.catalogue import Figure, catalogue
from latchside.library import Library
from latchside.library.model import Record
from latchside.planning.figures_for.context import Context, device_of
from latchside.planning.figures_for.magnet import left
from latchside.planning.figures_for.places import PLACES
from latchside.planning.opening_figures import opening_figures
from latchside.planning.plan import Expected, Fixing, Line
from latchside.project import Checked
from latchside.surveys.survey import ControlUnit, Opening, Site, Survey

from .plans import RECESSED, SURFACE, TRANSMITTER, WIDE, house

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
    [("gap_mm", "Gap and make distance"), ("play_mm", "Gap and make distance"), ("step_mm", "Spacer"),
     ("floors", "Radio margin"), ("walls", "Radio margin"), ("distance_m", "Radio margin"),
     ("openings_a_day", "Battery")],
)  # fmt: skip
def test_a_field_left_open_takes_the_good_away(library: Library, missing: str, name: str) -> None:
    assert line(library, SURFACE, name).verdict == "good"
    assert line(library, SURFACE, name, **{missing: None}).verdict in ("test on site", "none")


@pytest.mark.parametrize(
    ("gap", "play", "steel", "verdict"),
    [
        (4.0, 1.0, "none", "good"), (5.0, 4.0, "none", "good"), (9.0, 3.5, "none", "good"),
        (9.0, 3.6, "none", "test on site"), (9.1, 1.0, "none", "test on site"), (2.0, 1.0, "none", "test on site"),
        (9.0, 5.1, "none", "test on site"), (9.0, 5.2, "none", "poor"), (14.2, 0.0, "none", "poor"),
        (4.0, 1.4, "both", "good"), (4.0, 1.5, "both", "test on site"), (9.0, 5.1, "both", "test on site"),
        (9.0, 5.2, "both", "poor"),
        (4.0, 1.4, "unknown", "good"), (6.0, 1.0, "unknown", "test on site"), (14.0, 1.0, "unknown", "poor"),
    ],
)  # fmt: skip
def test_gap_and_play(library: Library, gap: float, play: float, steel: str, verdict: str) -> None:
    """Sure in air: 18.5 x 0.9 x 0.97 = 16.15 mm, so 14.15 with 2 mm of sag, and 0.9 x 16.15 - 2 = 12.5 with a margin.

    On steel: 9.5 x 0.9 x 0.97 = 8.29 mm, so 5.46 with sag and margin; spacers win some back. The gap
    itself is fitted to 9 mm, or to 4.75 on steel.
    """
    assert line(library, SURFACE, "Gap and make distance", gap_mm=gap, play_mm=play, steel=steel).verdict == verdict


def test_a_barrel_in_steel_has_no_spacer_to_win_anything_back(library: Library) -> None:
    """Sure in steel: 10 x 0.85 x 0.96 = 8.16 mm, so 6.16 with 2 mm of sag."""
    for play, verdict in ((2.1, "test on site"), (2.2, "poor")):
        found = line(library, RECESSED, "Gap and make distance", gap_mm=4.0, play_mm=play, steel="both")
        assert found.verdict == verdict


def test_a_steel_leaf_is_steel_whatever_else_is_said(library: Library) -> None:
    assert line(library, SURFACE, "Gap and make distance", gap_mm=5.0, leaf_material="steel").verdict == "test on site"


@pytest.mark.parametrize(
    ("play", "steel", "verdict"),
    [(0.0, "none", "good"), (4.0, "none", "good"), (15.0, "none", "good"), (15.1, "none", "poor"),
     (5.3, "both", "good"), (5.4, "both", "test on site"), (15.1, "both", "poor"),
     (5.4, None, "test on site"), (15.1, None, "poor")],
)  # fmt: skip
def test_pushed_through_its_play_the_leaf_stays_below_the_break_distance(
    library: Library, play: float, steel: str | None, verdict: str
) -> None:
    """At a gap of 5 mm. Sure in air: 23 x 0.9 x 0.97 = 20.08 mm; on steel the same share as making, 10.31 mm."""
    found = line(library, SURFACE, "Push and break distance", gap_mm=5.0, play_mm=play, steel=steel)
    assert found.verdict == verdict
    assert ("adjusted first" in found.meaning) == (verdict != "good")


def test_a_loose_latch_is_told_though_it_harms_no_contact(library: Library) -> None:
    """A play of 4 mm at a gap of 5 is harmless where the contact breaks at 20 or more; the customer is told of it."""
    said = {"gap_mm": 5.0, "play_mm": 4.0}
    assert line(library, SURFACE, "Gap and make distance", **said).verdict == "good"
    assert line(library, SURFACE, "Push and break distance", **said).verdict == "good"
    latch = line(library, SURFACE, "Latch", **said)
    assert latch.verdict == "test on site"
    assert "Tell the customer" in latch.meaning
    for quiet in ({"play_mm": 3.0}, {"play_mm": 4.0, "kind": "roller-door"}):
        assert "Latch" not in [one.name for one in figures_of(library, SURFACE, **{**KNOWN, **quiet})[0]]


def test_a_hinged_leaf_plays_across_two_barrels(library: Library) -> None:
    """The label allows an offset of 4 mm; straight away from each other, as a sliding leaf moves, it is no limit."""
    name = "Push and break distance"
    assert line(library, RECESSED, name, play_mm=4.0).verdict == "good"
    assert line(library, RECESSED, name, play_mm=4.1).verdict == "test on site"
    assert line(library, RECESSED, name, play_mm=4.1, kind="sliding").verdict == "good"


def test_a_balanced_contact_has_a_least_gap(library: Library) -> None:
    record = device(library, SURFACE)
    least = {"min": 4, "unit": "mm", "status": "typical"}
    balanced = replace(record, _data={**record.data, "values": {**record["values"], "least-gap": least}})
    for gap, verdict in ((5.0, "good"), (4.9, "poor")):
        opening = Opening("o", "Hall", **{**KNOWN, "kind": "hinged-door", "gap_mm": gap, "play_mm": 1.0})
        survey = Survey("s", "S", (opening,), site=US, control_unit=UNIT)
        lines = opening_figures(opening, balanced, survey, FIGURES, ON, house(library))[0]
        assert next(one for one in lines if one.name == "Push and break distance").verdict == verdict


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


def test_what_nobody_looked_at_is_not_stated_under_the_halves(library: Library) -> None:
    """Nobody measured the step, or tried for steel: the plan says what decides, and the step is measured first."""
    found, fixed = line(library, SURFACE, "Spacer", step_mm=None), fixing(library, SURFACE, step_mm=None)
    assert found.verdict == "test on site"
    assert found.shown.startswith("if the surfaces are level: one spacer")
    assert fixed.spacer.startswith("If the surfaces are level: one spacer")
    assert "if they are stepped: by the step, measured first" in fixed.spacer
    assert fixing(library, SURFACE).spacer.startswith("Two spacers"), "it is stated where the step was measured"
    for id_, words in ((RECESSED, "a plastic sleeve"), (SURFACE, "as many more under both halves")):
        assert f"where a test magnet finds steel: {words}" in fixing(library, id_, steel=None).spacer
        assert "steel" not in fixing(library, id_).spacer


def test_reach_on_steel_is_worked_where_no_label_states_it(library: Library) -> None:
    """By the image method, which leaves about a half."""
    record = device(library, SURFACE)
    bare = {name: one for name, one in record["values"].items() if name != "reach-on-steel"}
    without = replace(record, _data={**record.data, "values": bare})
    opening = Opening("o", "Hall", "hinged-door")
    context = Context(opening, device_of(without), Survey("s", "S", (opening,)), FIGURES, ON)
    air, steel = left(context, steel=False), left(context, steel=True)
    assert 0.4 < steel.fit_to / 9.25 < 0.8
    assert steel.make < air.make
    assert steel.breaks < air.breaks


def test_a_contact_that_stays_is_not_drilled_nor_trusted_unseen(library: Library) -> None:
    """Which part it is, nobody said: no limit of another class calls it good or poor, whatever the gap."""
    for gap in (4.0, 19.0, None):
        lines, expected, _ = figures_of(library, RECESSED, **{**KNOWN, "old_contact": True, "gap_mm": gap})
        found = [one for one in lines if one.figure == "reed-gap"]
        assert [(one.name, one.verdict) for one in found] == [
            ("Gap and make distance, contact in place", "test on site")
        ]
        assert "fit-gap" not in {one.measure for one in expected}
    assert "nothing is drilled" in fixing(library, RECESSED, old_contact=True).hold
    assert "stays where it is" in fixing(library, TRANSMITTER, old_contact=True).magnet


@pytest.mark.parametrize(
    ("said", "words"),
    [({"hardware": ("panic-bar",)}, "no part and no cable on the bar"), ({"powered": True}, "isolated and locked off"),
     ({"hardware": ("magnetic-lock", "closer")}, "at the other end of the head")],
)  # fmt: skip
def test_hardware_of_the_door_is_kept_clear_of(library: Library, said: Mapping[str, Any], words: str) -> None:
    assert words in fixing(library, SURFACE, **said).hold
    assert words not in fixing(library, SURFACE, hardware=(), powered=False).hold


def test_a_place_without_holes_is_never_worked_around_with_pads_that_cannot_bear_the_part(library: Library) -> None:
    """A cable pulls a transmitter off its pad, so it is screwed to the wall beside the opening."""
    assert "Pads" in fixing(library, SURFACE, drill=False).hold
    for id_ in (TRANSMITTER, RECESSED, WIDE):
        assert "Pads" not in fixing(library, id_, drill=False).hold
    assert "screwed to the wall" in fixing(library, TRANSMITTER, drill=False).hold


def test_a_fire_rated_leaf_is_never_drilled(library: Library) -> None:
    for field, answer in product(("fire_rated", "escape"), (True, None)):
        for id_ in (SURFACE, RECESSED):
            hold = fixing(library, id_, **{field: answer}).hold
            assert hold.startswith("No new hole and no new screw unless" if answer else "No hole before it is known")
        beside = fixing(library, TRANSMITTER, **{field: answer}).hold
        assert "no hole and no screw in door or frame" in beside if answer else beside.startswith("No hole before")


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
    found = line(library, id_, "Battery", openings_a_day=uses)
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


LOOSE = {"little": 1.5, "some": 2.0, "too much": 50.0}


def test_expected_values_go_by_the_names_of_the_checklists(library: Library) -> None:
    surface = values(library, SURFACE)
    assert set(surface) == {"fit-gap", "play", "trip", "radio-margin", "check-in", "cell-voltage"}
    assert (surface["fit-gap"].low, surface["fit-gap"].high) == (3, 9)
    assert (surface["check-in"].low, surface["check-in"].high) == (None, 66), "more often is no fault"
    assert surface["cell-voltage"].low == pytest.approx(2.7)
    assert set(values(library, RECESSED)) == {"fit-gap", "play", "trip", "loop-shut", "loop-open", "loop-short"}
    assert values(library, SURFACE, steel="both", play_mm=0.0)["fit-gap"].high == 4.5, (
        "4.7, read on slips of half a millimetre"
    )
    loose = {name: values(library, SURFACE, steel="both", play_mm=play)["fit-gap"] for name, play in LOOSE.items()}
    some, little = loose["some"].high, loose["little"].high
    assert some is not None
    assert little is not None
    assert some == pytest.approx(little - 0.5), "what the play takes is not there for the gap"
    assert (loose["too much"].low, loose["too much"].high) == (3, 3)


@given(
    use=st.floats(0, 10000), more=st.floats(0, 1000), gap=st.floats(10, 30), wider=st.floats(0, 10),
    play=st.floats(0, 6), steel=st.sampled_from([None, "none", "both"]),
)  # fmt: skip
def test_more_use_gap_or_play_is_never_better(
    shipped: Checked, use: float, more: float, gap: float, wider: float, play: float, steel: str | None
) -> None:
    library, rank = shipped.library, {"poor": 0, "test on site": 1, "none": 1, "good": 2}
    uses = min(use + more, 10000.0)
    busy, calm = (line(library, SURFACE, "Battery", openings_a_day=one).inputs["change_months"] for one in (uses, use))
    assert busy <= calm
    wide, near = (
        line(library, SURFACE, "Gap and make distance", gap_mm=one, play_mm=play, steel=steel)
        for one in (gap + wider, gap)
    )
    assert rank[wide.verdict] <= rank[near.verdict]
    loose, tight = (
        line(library, SURFACE, "Push and break distance", gap_mm=gap, play_mm=one, steel=steel)
        for one in (play + wider, play)
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


TRIP = "Trip at the leading edge"
UK = Site(region="united-kingdom")


@pytest.mark.parametrize(
    ("id_", "kind", "site", "verdict", "limit"),
    [
        (SURFACE, "hinged-door", US, "good", 50.8), (SURFACE, "casement", US, "good", 152.4),
        (SURFACE, "casement", UK, "good", 50.0), (SURFACE, "sliding", UK, "good", 50.0),
        (WIDE, "hinged-door", US, "poor", 50.8), (WIDE, "sliding", UK, "poor", 50.0),
        (WIDE, "roller-door", US, "good", 100.0), (SURFACE, "hinged-door", Site(), "test on site", 50.0),
    ],
)  # fmt: skip
def test_the_trip_at_the_leading_edge(
    library: Library, id_: str, kind: str, site: Site, verdict: str, limit: float
) -> None:
    """Surface set: 25 x 1.1 x 1.03 = 28.3 mm of travel. Times 700 / 550 at a door, 36.1 mm; 400 / 250 at a sash, 45.4.

    Wide reach: 75 x 1.1 x 1.05 = 86.6 mm, past every limit of a door and inside that of a roller door.
    """
    lines = figures_of(library, id_, site=site, **{**KNOWN, "kind": kind})[0]
    found = next(one for one in lines if one.name == TRIP)
    assert found.verdict == verdict
    assert found.inputs["limit_mm"] == limit
    ways = {"hinged-door": 700 / 550, "casement": 400 / 250}
    travel = 25 * 1.1 * 1.03 if id_ == SURFACE else 75 * 1.1 * 1.05
    assert found.inputs["trip_mm"] == pytest.approx(travel * ways.get(kind, 1), abs=0.11)
    assert ("by the house rule" in " ".join(found.assumed)) == (kind in ways)


def test_a_trip_that_only_a_nearer_place_keeps_inside_its_limit(library: Library) -> None:
    """A travel of 38 x 1.1 x 1.03 = 43.1 mm: 54.8 mm at the edge from 150 mm, and inside 50.8 within 106 mm of it."""
    record = device(library, SURFACE)
    travel = {**record["values"]["break-travel"], "value": 38}
    late = replace(record, _data={**record.data, "values": {**record["values"], "break-travel": travel}})
    opening = Opening("o", "Hall", **{**KNOWN, "kind": "hinged-door"})
    survey = Survey("s", "S", (opening,), site=US, control_unit=UNIT)
    lines, _, fixed = opening_figures(opening, late, survey, FIGURES, ON, house(library))
    found = next(one for one in lines if one.name == TRIP)
    assert found.verdict == "test on site"
    assert "within 106" in found.meaning.replace("\u00a0", " ")
    assert found.inputs["nearest_trip_mm"] < found.inputs["trip_mm"] <= 50.8, "at the place that is printed"
    assert fixed is not None
    assert "at most 106 mm" in fixed.sensor.replace("\u00a0", " "), "the place says no more than the trip allows"


def test_a_hand_is_a_target_and_no_limit(library: Library) -> None:
    found = line(library, SURFACE, TRIP)
    assert found.verdict == "good"
    assert found.inputs["trip_mm"] > found.inputs["hand_mm"]
    assert "before a flat hand" in found.meaning


@pytest.mark.parametrize("id_", [SURFACE, RECESSED, "steel-door-contact", "wired-surface-contact"])
@pytest.mark.parametrize("kind", ["hinged-door", "double-door", "casement", "tilt-and-turn"])
def test_every_place_that_is_printed_trips_in_time_where_the_trip_is_no_problem(
    library: Library, id_: str, kind: str
) -> None:
    """The edge of a leaf that turns moves the way of the contact times width over the contact's way from the hinge."""
    for width, site in product((None, 0.08, 0.35, 0.5, 0.62, 0.7, 0.9, 1.3), (US, UK, Site())):
        lines, _, fixed = figures_of(library, id_, site=site, **{**KNOWN, "kind": kind, "width_m": width})
        found = next(one for one in lines if one.name == TRIP)
        assert fixed is not None
        said = re.search(r"([\d.]+) mm \([^)]*\) from the (?:corner|meeting edge)", fixed.sensor.replace("\u00a0", " "))
        assert said, fixed.sensor
        farthest, whole = float(said[1]), found.inputs["width_mm"]
        edge = found.inputs["travel_mm"] * whole / (whole - farthest)
        if found.verdict != "poor":
            assert edge <= found.inputs["limit_mm"] + 1e-9
            assert edge <= found.inputs["trip_mm"] + 1e-9, "the figure is worked at the place that is printed"


@pytest.mark.parametrize("device", [SURFACE, RECESSED])
def test_nothing_goes_into_the_thermal_break_of_aluminium(library: Library, device: str) -> None:
    """Common practice: the break carries load and keeps the inside dry, and a chamber that drains stays whole."""
    for material, warned in (("aluminium", True), ("wood", False), ("steel", False)):
        told = {"leaf_material": material, "frame_material": material, "drill": True}
        assert ("thermal break" in fixing(library, device, **told).hold) == warned
