"""Free positions: what changes where they are short, in which order, and what is said of what is left over."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from latchside.figures.catalogue import Figure
from latchside.library import Library
from latchside.planning.make import make_plan
from latchside.planning.plan import OpeningPlan, Plan
from latchside.surveys.survey import ControlUnit, Opening, Override, Site, Survey, Wall

from .plans import RECESSED, SURFACE, TRANSMITTER, codes, id_of

ON = date(2026, 4, 2)
UNIT = ControlUnit(
    owner="customer", installer_access=True, frequency_mhz=868.3, sensitivity_dbm=-105.0, layout="series",
    end_of_line_ohm=4700.0, name_length=40,
)  # fmt: skip
DOOR = Opening(
    id="door", place="Hall", kind="hinged-door", side="street", fire_rated=False, escape=False, play_mm=1.0, gap_mm=4.0,
    step_mm=0.0, use="entry-route", height_m=1.7, distance_m=8.0, walls=(), floors=0, outer_wall="no", cable=True,
    cable_length_m=12.0, cable_area_mm2=0.22, old_contact=False, outdoors=False, drill=True, wish="hidden",
    leaf_material="wood", frame_material="wood", steel="none", glazed=False, powered=False, hardware=(),
    openings_a_day=20.0,
)  # fmt: skip
WINDOW = replace(
    DOOR, id="window", place="Study", kind="casement", use="other", cable=False, cable_length_m=None, wish="surface",
    glazed=None, rail_depth_mm=60.0, drill=False,
)  # fmt: skip


@pytest.fixture
def planned(library: Library, figures: Mapping[str, Figure]) -> Any:
    def plan(*openings: Opening, wired: int | None = None, radio: int | None = None) -> Plan:
        unit = replace(UNIT, wired_positions=wired, radio_positions=radio)
        site = Site("united-kingdom", keyholder_arranged=True)
        return make_plan(Survey("s", "S", openings, site=site, control_unit=unit), library, figures, ON)

    return plan


def of(plan: Plan, id_: str) -> OpeningPlan:
    return next(one for one in plan.openings if one.opening.id == id_)


def test_no_wired_position_puts_a_transmitter_at_the_loop(planned: Any) -> None:
    """The contact that would be fitted stays: it goes on the loop of the transmitter, and the reason is told."""
    assert of(planned(DOOR), "door").choice.device == RECESSED
    plan = planned(DOOR, wired=0, radio=4)
    choice = of(plan, "door").choice
    assert (choice.device, choice.contact) == (TRANSMITTER, RECESSED)
    assert choice.moved is not None
    assert choice.moved in choice.reasons
    assert "0 wired positions" in choice.moved
    assert id_of(choice.moved) == "positions#to-radio"
    assert next(one for one in choice.passed_over if one.device == RECESSED).why == (choice.moved,)
    assert [zone.link for zone in plan.zones] == ["radio"]
    assert "too-few-positions" not in [one.code for one in plan.problems]


def test_the_entry_door_keeps_its_wire_longest(planned: Any) -> None:
    back = replace(DOOR, id="back", place="Scullery", use="other")
    plan = planned(DOOR, back, wired=1, radio=1)
    assert (of(plan, "door").choice.device, of(plan, "back").choice.device) == (RECESSED, TRANSMITTER)


def test_a_kept_contact_stays_on_the_loop_of_the_transmitter(planned: Any) -> None:
    plan = planned(replace(DOOR, old_contact=True), wired=0, radio=1)
    assert (of(plan, "door").choice.device, of(plan, "door").choice.contact) == (TRANSMITTER, None)
    assert not any(one.name.startswith("Recessed contact") for one in plan.items)


def test_radio_that_cannot_do_is_no_way_out(planned: Any) -> None:
    """Behind sheet metal far away no transmitter is heard: the opening keeps its wire, and lacks a position."""
    far = replace(DOOR, distance_m=900.0, walls=(Wall("metal"),) * 4)
    plan = planned(far, wired=0, radio=4)
    assert of(plan, "door").choice.device == RECESSED
    assert of(plan, "door").choice.lacks
    assert {("control-unit", "too-few-positions"), ("door", "no-position")} <= set(codes(plan.problems))
    told = next(one for one in plan.problems if one.code == "too-few-positions")
    assert "Hall street door" in told.found
    assert id_of(told.action) == "positions#order-expander"


def test_no_radio_position_wires_what_has_a_way(planned: Any) -> None:
    """A measured run is a way; an opening without one is told, with the cheapest way out."""
    measured = replace(WINDOW, cable_length_m=9.0, drill=True)
    assert of(planned(measured), "window").choice.device == SURFACE
    plan = planned(measured, wired=2, radio=0)
    window = of(plan, "window")
    assert [zone.link for zone in plan.zones] == ["wired"]
    assert id_of(window.choice.moved) == "positions#to-measured-run"
    left = planned(WINDOW, wired=2, radio=0)
    assert of(left, "window").choice.device == SURFACE
    told = next(one for one in left.problems if one.code == "too-few-positions")
    assert id_of(told.action) == "positions#measure-or-order-receiver"


def test_two_leaves_share_a_loop_where_positions_are_short(planned: Any) -> None:
    """Nothing is ordered for it and no device changes; both contacts keep a name, and are read by themselves."""
    pair = replace(DOOR, id="pair", place="Yard", kind="double-door", passive_leaf=True)
    assert len(planned(pair, wired=2).zones) == 2
    plan = planned(pair, wired=1, radio=8)
    one = of(plan, "pair")
    assert (one.choice.device, one.choice.shared, len(plan.zones)) == (of(planned(pair), "pair").choice.device, True, 1)
    assert len(one.contact_names) == len(set(one.contact_names)) == 2
    assert "zones#shared-loop" in map(id_of, plan.zones[0].reasons)


def test_what_is_left_over_is_the_least_important_and_numbered_last(planned: Any) -> None:
    row = [replace(WINDOW, id=f"w{number}", place=f"Room {number}") for number in range(3)]
    entry = replace(WINDOW, id="entry", kind="hinged-door", use="entry-route", glazed=False)
    plan = planned(row[0], entry, *row[1:], wired=0, radio=2)
    assert [one.opening.id for one in plan.openings if one.choice.lacks] == ["w1", "w2"]
    assert {zone.opening: zone.position for zone in plan.zones} == {"w0": "R1", "entry": "R2", "w1": "R3", "w2": "R4"}
    assert {one.about for one in plan.problems if one.code == "no-position"} == {"w1", "w2"}


def test_the_lead_is_never_overruled(planned: Any) -> None:
    door = replace(DOOR, override=Override(RECESSED, "The customer has bought it."))
    plan = planned(door, wired=0, radio=4)
    assert (of(plan, "door").choice.device, of(plan, "door").choice.moved) == (RECESSED, None)
    assert of(plan, "door").choice.lacks


def test_a_number_that_nobody_told_limits_nothing(planned: Any) -> None:
    row = [replace(DOOR, id=f"d{number}", place=f"Room {number}") for number in range(30)]
    plan = planned(*row)
    assert {one.choice.device for one in plan.openings} == {RECESSED}
    assert not any(one.choice.moved or one.choice.lacks for one in plan.openings)
