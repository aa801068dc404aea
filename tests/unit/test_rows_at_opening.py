"""What is read at an opening, where it goes, and what is asked of it, by what such an opening can have."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from latchside.library import Library
from latchside.planning.names import contacts
from latchside.planning.plan import Expected, Line
from latchside.planning.question_words import can_matter
from latchside.project import Checked
from latchside.surveys.survey import ControlUnit, Opening

from .plans import RECESSED, SURFACE, TRANSMITTER, WIRED_SURFACE
from .test_job_figures_openings import KNOWN, UNIT, figures_of, fixing

KINDS = (
    "hinged-door", "double-door", "casement", "double-hung", "tilt-and-turn", "sliding", "lift-and-slide",
    "roof-window", "roller-door", "up-and-over", "hatch", "gate",
)  # fmt: skip


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def rows(library: Library, id_: str, unit: ControlUnit = UNIT, **said: Any) -> dict[str, Expected]:
    return {one.measure: one for one in figures_of(library, id_, unit, **{**KNOWN, **said})[1]}


def line(library: Library, id_: str, id_of_name: str, **said: Any) -> Line | None:
    found = figures_of(library, id_, **{**KNOWN, **said})[0]
    return next((one for one in found if getattr(one.name, "id", "") == f"planning/figures_for/{id_of_name}"), None)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("play", [None, 1.0, 15.0])
def test_play_is_written_down_and_no_play_fails_a_sheet(library: Library, kind: str, play: float | None) -> None:
    """Common practice: what counts is that nothing trips; a roller door plays more than a hinged one."""
    for id_ in (SURFACE, RECESSED, WIRED_SURFACE):
        found = rows(library, id_, kind=kind, play_mm=play)["play"]
        assert (found.low, found.high) == (0.0, None)


@pytest.mark.parametrize(("play", "loose"), [(3.0, False), (25.4 / 8, False), (3.5, True), (6.0, True)])
def test_an_eighth_of_an_inch_is_no_loose_latch(library: Library, play: float, loose: bool) -> None:
    assert (line(library, SURFACE, "magnet#latch", play_mm=play) is not None) == loose


def test_a_hatch_has_no_latch_to_be_loose(library: Library) -> None:
    assert line(library, SURFACE, "magnet#latch", kind="hatch", play_mm=8.0) is None


def test_an_opening_that_opens_two_ways_is_read_both_ways(library: Library) -> None:
    """Common practice: each way that it opens is proved."""
    tilted = rows(library, SURFACE, kind="tilt-and-turn")
    assert tilted["trip-tilted"].high == tilted["trip"].high
    assert "shows-lifted" in rows(library, SURFACE, kind="lift-and-slide")
    assert {"trip-tilted", "shows-lifted"}.isdisjoint(rows(library, SURFACE, kind="casement"))


@pytest.mark.parametrize(
    ("layout", "shows"),
    [("none", False), ("series", False), ("parallel", True), ("double", True), ("double-across", True), (None, False)],
)
def test_a_cut_has_a_row_where_the_layout_tells_it_from_an_open_door(
    library: Library, layout: str | None, shows: bool
) -> None:
    """With nothing across the contact an open contact and a cut pair are the same circuit: no current flows."""
    found = rows(library, RECESSED, replace(UNIT, layout=layout, second_resistor_ohm=2200.0))
    assert ("loop-cut" in found) == shows


def test_a_cable_whose_size_is_known_has_a_row(library: Library) -> None:
    """20 m of 0.5 mm2: 40 m of conductor at 36.0 ohm/km (IEC 60228, class 1, plain, at 20 degC) is 1.44 ohm."""
    found = rows(library, RECESSED, cable=True, cable_area_mm2=0.5)["cable-ohm"]
    assert found.high is not None
    assert 1.44 <= found.high <= 1.44 * 1.25
    assert "cable-ohm" not in rows(library, RECESSED, cable=True, cable_length_m=None)
    assert "cable-ohm" not in rows(library, RECESSED, cable=True)


def test_the_input_has_rows_for_its_voltage_where_it_can_be_worked(library: Library) -> None:
    """12 V over 2200 ohm of pull-up and a loop of 2200: half of it, 6 V, when the door is closed."""
    unit = replace(UNIT, supply_v=12.0, pull_up_ohm=2200.0)
    found = rows(library, RECESSED, unit)
    assert "5.7" in found["input-shut"].shown
    assert found["input-shut"].high is None  # the panel's own window decides
    assert "input-shut" not in rows(library, RECESSED)


def test_the_loop_of_a_transmitter_is_read_closed_open_and_shorted(library: Library) -> None:
    found = rows(library, TRANSMITTER)
    assert {"loop-shut", "loop-open", "loop-short"} <= set(found)
    assert found["loop-short"].high is not None
    assert found["loop-shut"].low is not None
    assert found["loop-short"].high < found["loop-shut"].low  # a short is told from the smallest resistor


@pytest.mark.parametrize(
    ("cable", "old", "length", "verdict"),
    [
        (False, False, 40.0, "none"), (True, True, 9.0, "test on site"), (True, True, 31.0, "poor"),
        (True, True, None, "test on site"), (True, False, 31.0, "test on site"),
    ],
)  # fmt: skip
def test_a_loop_longer_than_the_transmitter_allows_is_settled_first(
    library: Library, cable: bool, old: bool, length: float | None, verdict: str
) -> None:
    """Its label allows 10 m. A new run is made short; along a cable that is there a new contact is set near."""
    found = line(library, TRANSMITTER, "cable#loop-name", cable=cable, old_contact=old, cable_length_m=length)
    assert found is not None
    assert found.verdict == verdict
    assert bool(found.action) == (verdict == "poor")


def test_a_magnet_on_the_upper_sash_is_tried_with_the_lower_one_raised(library: Library) -> None:
    """A magnet of 8 mm on two spacers of 5 mm stands 18 mm proud."""
    at = {"kind": "double-hung", "upper_sash": True}
    found = line(library, SURFACE, "magnet#clearance", step_mm=6.0, **at)
    assert found is not None
    assert (found.verdict, found.inputs["proud_mm"]) == ("test on site", 18.0)
    assert line(library, RECESSED, "magnet#clearance", **at) is None
    assert line(library, SURFACE, "magnet#clearance", kind="double-hung", upper_sash=False) is None
    assert "side stop" in fixing(library, SURFACE, **at).sensor  # as the picture has it


def test_a_loose_lid_has_two_contacts_and_no_hinges(library: Library) -> None:
    """Common practice: a lid without hinges can be lifted at whichever edge has no contact."""
    loose = fixing(library, SURFACE, kind="hatch", loose_lid=True)
    assert "opposite edges" in loose.sensor
    assert "hinge" not in loose.sensor + loose.magnet
    lids = [contacts(Opening("o", "Loft", "hatch", loose_lid=one)) for one in (True, False, None)]
    assert lids == [2, 1, 1]


def test_a_hatch_outdoors_is_no_loft_hatch(library: Library) -> None:
    assert "ladder" not in fixing(library, SURFACE, kind="hatch", outdoors=True).hold
    assert "ladder" in fixing(library, SURFACE, kind="hatch", outdoors=False).hold


def test_a_gap_within_the_label_off_steel_is_no_failure_while_nobody_tried_for_steel(library: Library) -> None:
    """6 mm is inside 3 to 9 mm off steel; on steel the half of 9.5 mm, 4.7, is the most, and less with play."""
    found = rows(library, SURFACE, steel="unknown", gap_mm=6.0)["fit-gap"]
    assert "9" in found.shown
    # what closes for sure over steel, less a tenth, the sag and 1 mm of play: 4.4, read on slips of half a millimetre
    assert "at most 4\u00a0mm" in found.shown


def test_a_roof_window_is_no_place_for_a_leaning_ladder(library: Library) -> None:
    """Common practice: work with both hands above the head is done from a platform."""
    for height, way in ((3.35, "platform"), (1.5, "floor")):
        found = fixing(library, SURFACE, kind="roof-window", height_m=height).height
        assert way in found
    assert "ladder" not in fixing(library, SURFACE, kind="roof-window", height_m=3.35).height


@pytest.mark.parametrize(
    ("field", "kind", "asked"),
    [
        ("hardware", "hinged-door", True), ("hardware", "gate", True), ("hardware", "double-hung", False),
        ("hardware", "roof-window", False), ("powered", "roller-door", True), ("powered", "roof-window", True),
        ("powered", "double-hung", False), ("powered", "hatch", False), ("gap", "hatch", True),
    ],
)  # fmt: skip
def test_nothing_is_asked_that_such_an_opening_cannot_have(field: str, kind: str, asked: bool) -> None:
    assert can_matter(field, Opening("o", "Hall", kind)) == asked


def test_the_gauge_is_asked_of_a_cable_that_is_there_alone() -> None:
    there = [can_matter("cable_area", Opening("o", "Hall", "casement", cable=one)) for one in (True, False, None)]
    assert there == [True, False, True]


def test_words_and_picture_of_a_hinged_door_name_one_place(library: Library) -> None:
    """The picture has the sensor on the head of the frame and the magnet on the top edge of the door."""
    found = fixing(library, SURFACE, kind="hinged-door")
    assert "head of the frame" in found.sensor
    assert "top of the door" in found.magnet
