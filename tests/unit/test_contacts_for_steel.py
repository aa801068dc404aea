"""Where the contacts that are made for steel go, and what holds them: common practice of the trade."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

import pytest

from latchside.figures.catalogue import catalogue
from latchside.library import Library
from latchside.planning.opening_figures import opening_figures
from latchside.planning.plan import Expected, Fixing
from latchside.planning.times import AT_OPENING
from latchside.planning.work import procedures_at
from latchside.surveys.survey import Opening, Survey

from .plans import STEEL_DOOR, TRANSMITTER, WIRED_SURFACE, at

FIGURES = catalogue()
STEEL: Mapping[str, Any] = {
    "kind": "hinged-door", "leaf_material": "steel", "frame_material": "steel", "steel": "both", "gap_mm": 4.0,
    "play_mm": 1.0, "step_mm": 0.0, "fire_rated": False, "escape": False, "drill": True, "old_contact": False,
    "cable": True, "height_m": 1.8,
}  # fmt: skip


def worked(library: Library, id_: str, contact: str | None = None, **said: Any) -> tuple[tuple[Expected, ...], Fixing]:
    opening = Opening("o", "Store", **{**STEEL, **said})
    device, on_loop = library.find("device", id_), library.find("device", contact) if contact else None
    assert device is not None
    survey = Survey("s", "S", (opening,))
    _, expected, fixing = opening_figures(opening, device, survey, FIGURES, date(2026, 11, 25), contact=on_loop)
    assert fixing is not None
    return expected, fixing


def gap(expected: tuple[Expected, ...]) -> tuple[float | None, float | None]:
    found = next(one for one in expected if one.measure == "fit-gap")
    return found.low, found.high


def test_a_steel_door_contact_is_let_in_with_its_sleeves(shipped_library: Library) -> None:
    expected, fixing = worked(shipped_library, STEEL_DOOR)
    assert fixing.sensor.startswith("Reed in the head of the frame")
    assert fixing.magnet.startswith("Magnet in the top edge")
    assert "plastic sleeve round each half" in fixing.spacer
    assert "Drilled: 19" in fixing.hold
    assert gap(expected) == (3, 9)  # half of 18 mm in steel


def test_a_wired_surface_contact_stands_on_spacers_on_steel(shipped_library: Library) -> None:
    expected, fixing = worked(shipped_library, WIRED_SURFACE)
    assert fixing.sensor.startswith("Sensor on the head of the frame at the latch side")
    assert fixing.spacer == "The same spacers under both halves, off the steel."
    assert "a magnet does not pull" in fixing.hold
    assert "Drilled:" not in fixing.hold
    assert gap(expected) == (3, 9)  # half of 18 mm flush on steel
    wood = {"leaf_material": "wood", "frame_material": "wood", "steel": "none"}
    assert gap(worked(shipped_library, WIRED_SURFACE, **wood)[0]) == (3, 14)


@pytest.mark.parametrize("leaf", ["steel", "plastic", "wood", "glass"])
def test_without_holes_it_is_on_pads_that_bear_it_and_its_cable_is_held(leaf: str, shipped_library: Library) -> None:
    _, fixing = worked(shipped_library, WIRED_SURFACE, drill=False, leaf_material=leaf)
    assert fixing.hold.startswith("Pads")
    assert "several times the weight" in fixing.hold
    assert "Metal clips hold the cable along the wall" in fixing.hold, "glue alone lets it fall in a fire"
    assert "Screws" not in fixing.hold


@pytest.mark.parametrize("answer", [{"fire_rated": True}, {"escape": True}])
@pytest.mark.parametrize("device", [STEEL_DOOR, WIRED_SURFACE])
def test_a_certified_door_takes_what_its_listing_allows(
    answer: dict[str, Any], device: str, shipped_library: Library
) -> None:
    _, fixing = worked(shipped_library, device, **answer)
    assert fixing.hold.startswith("No new hole and no new screw unless its listing")
    assert "pads of a stated load only as far as they allow" in fixing.hold


def test_a_sound_contact_on_a_fire_door_stays(shipped_library: Library) -> None:
    _, fixing = worked(shipped_library, WIRED_SURFACE, fire_rated=True, old_contact=True)
    assert fixing.hold.startswith("The sound contact in place stays")


@pytest.mark.parametrize(
    ("contact", "place", "pieces"),
    [(STEEL_DOOR, "in the top edge of the door", "a plastic sleeve round each half"),
     (WIRED_SURFACE, "on the top of the door at the latch side", "the same spacers under both halves")],
)  # fmt: skip
def test_a_contact_on_the_loop_of_a_transmitter_goes_where_its_own_class_goes(
    contact: str, place: str, pieces: str, shipped_library: Library
) -> None:
    _, fixing = worked(shipped_library, TRANSMITTER, contact, cable=False)
    assert place in fixing.magnet
    assert fixing.spacer.startswith("None at the transmitter")
    assert pieces in fixing.spacer


def procedures(library: Library, id_: str, contact: str | None = None, **said: Any) -> list[str]:
    one = Opening("o", "Store", **{**STEEL, **said})
    part = at(library, [one], [id_], contact)[0]
    return [procedure for stage in AT_OPENING for procedure in procedures_at(part, stage, library)]


def test_a_hole_in_steel_comes_after_the_trial_and_before_the_joints(shipped_library: Library) -> None:
    """Common practice: the cable leaves through the hole, and no hole is made before the gap was tried."""
    done = procedures(shipped_library, STEEL_DOOR, cable=False, cable_length_m=12.0)
    order = ["try-gap", "drill-steel-door-contact", "run-cable", "join-and-terminate", "meter-loop",
             "fix-steel-door-contact"]  # fmt: skip
    assert [one for one in done if one in order] == order


def test_the_gap_is_tried_once_with_a_contact_on_a_loop(shipped_library: Library) -> None:
    done = procedures(shipped_library, TRANSMITTER, STEEL_DOOR, cable=False)
    assert done.count("try-gap") == 1
    assert done.index("try-gap") < done.index("drill-steel-door-contact") < done.index("fix-steel-door-contact")


def test_where_a_sound_contact_stays_nothing_is_drilled_or_fixed(shipped_library: Library) -> None:
    for device in (STEEL_DOOR, WIRED_SURFACE):
        done = procedures(shipped_library, device, old_contact=True, fire_rated=True)
        assert not [one for one in done if one.startswith(("drill-", "fix-", "position-"))]


def test_who_deburrs_has_the_tool_for_it(shipped_library: Library) -> None:
    seen = 0
    for procedure in shipped_library.of("procedure"):
        if any("deburr" in one["do"].lower() for stage in procedure["steps"] for one in stage["do"]):
            seen += 1
            assert "deburring-tool" in procedure["tools"], procedure.id
    assert seen > 3


def test_one_procedure_makes_the_joint_before_the_contact_is_fixed(shipped_library: Library) -> None:
    """Joined, metered, fixed, landed: what fixes a body with terminals looks at its joints and makes none."""
    wired = shipped_library.find("device", "wired-surface-contact")
    assert wired
    order = list(wired["procedures"]["wire"])
    assert order.index("join-and-terminate") < order.index("meter-loop") < order.index("fix-wired-surface-contact")
    assert order[-1] == "land-on-terminals"
    fixing = shipped_library.find("procedure", "fix-wired-surface-contact")
    joining = shipped_library.find("procedure", "join-and-terminate")
    assert fixing
    assert joining
    commands = [one["do"] for stage in fixing["steps"] for one in stage["do"]]
    assert not [one for one in commands if one.startswith(("Join", "Crimp", "Solder", "Strip", "Land"))]
    assert not [one for one in commands if "tamper zone" in one], "its pair is landed only afterwards"
    steps = {one["id"] for stage in joining["steps"] for one in stage["do"]}
    assert {"links", "cover-switch", "series", "press"} <= steps
