"""What goes on the van: counted by hand from the profiles and the house rules."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import ceil
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.library import Library
from latchside.messages import messages
from latchside.planning.cautions import cautions
from latchside.planning.house import rules_of
from latchside.planning.items import Spares, items
from latchside.planning.plan import Item
from latchside.planning.work import work
from latchside.project import Checked
from latchside.surveys.survey import ControlUnit, JobRules, Opening, Site, Survey

from .plans import RECESSED, SURFACE, TRANSMITTER, WIDE, at, house, id_of, opening

PROCEDURES = ("position-surface-contact", "fix-surface-contact", "prove-opening")


@pytest.fixture(scope="module")
def library(shipped: Checked) -> Library:
    return shipped.library


def van(
    library: Library, openings: Sequence[Opening], devices: Sequence[str | None],
    unit: ControlUnit | None = None, region: str | None = "united-states", contact: str | None = None, **rules: Any,
) -> dict[str, Item]:  # fmt: skip
    job = JobRules(**rules)
    of = Survey(
        "trial", "Trial", tuple(openings), site=Site(region=region), control_unit=unit or ControlUnit(), rules=job
    )
    firm = house(library)
    parts = at(library, openings, devices, contact)
    warnings = cautions(of, parts, library, firm)
    found = items(of, parts, PROCEDURES, warnings, library, firm, rules_of(job, firm))
    assert len({item.name for item in found}) == len(found)
    return {item.name: item for item in found}


def counted(found: dict[str, Item], name: str) -> tuple[float, float]:
    return found[name].quantity, found[name].spare


WALL = [opening(f"w{n}", "Room", "casement") for n in range(12)]


def test_sets_cells_and_what_they_use_up(library: Library) -> None:
    found = van(library, WALL, [SURFACE] * 12)
    assert counted(found, "Surface contact") == (12, 2)  # a tenth, rounded up
    assert counted(found, "Lithium battery, surface contact") == (12, 2)
    assert counted(found, "Screws, surface contact") == (48, 5)
    assert counted(found, "Adhesive pads, surface contact") == (24, 3)
    assert counted(found, "Spacer for the magnet, surface contact") == (24, 3)
    assert counted(found, "Bag with label") == (12, 2)
    assert counted(found, "Date label for a battery") == (12, 2)
    assert found["Surface contact"].record == "device/surface-contact"
    assert id_of(found["Surface contact"].used_for) == "items#set"
    assert "w0, w1, w2, w3, w4, w5, w6, w7 and 4 more" in found["Surface contact"].used_for
    assert not any("cable" in name.lower() or "resistor" in name.lower() for name in found)


@pytest.mark.parametrize(("percent", "spare"), [(0, 0), (1, 1), (25, 3), (100, 12)])
def test_the_surveys_spares_win(library: Library, percent: float, spare: float) -> None:
    assert counted(van(library, WALL, [SURFACE] * 12, spare_percent=percent), "Surface contact") == (12, spare)


@given(st.integers(1, 2000), st.integers(1, 100))
def test_spares_are_rounded_up_in_whole_numbers(quantity: int, percent: int) -> None:
    assert Spares(percent, 1).of(quantity) == max(1, -(-quantity * percent // 100))


def test_a_second_leaf_takes_a_second_set(library: Library) -> None:
    found = van(library, [opening("a", "Hall", "double-door", passive_leaf=True)], [SURFACE])
    assert counted(found, "Surface contact") == (2, 1)


def test_a_transmitter_carries_both_leaves_on_one_loop(library: Library) -> None:
    found = van(library, [opening("a", "Yard", "double-door", passive_leaf=True)], [TRANSMITTER])
    assert counted(found, "Transmitter with wired input") == (1, 1)
    assert counted(found, "Wired contact with magnet, class open") == (2, 1)
    assert counted(found, "Lithium battery, transmitter with wired input") == (1, 1)
    resistor = "End-of-line resistor, of the value on the label of the transmitter"
    assert counted(found, resistor) == (1, 1)


def test_a_wide_leaf_takes_a_contact_of_wide_reach(library: Library) -> None:
    found = van(library, [opening("a", "Garage", "roller-door")], [TRANSMITTER], contact=WIDE)
    assert counted(found, "Wide-gap contact, for a transmitter") == (1, 1)
    assert found["Wide-gap contact, for a transmitter"].record == "device/wide-reach-contact"
    assert counted(found, "Bracket for the magnet, wide-gap contact") == (1, 1), "a line of its own, ordered once"
    assert "bracket" not in found["Wide-gap contact, for a transmitter"].used_for
    assert "Wired contact with magnet, class open" not in found


def test_a_wide_reach_contact_on_its_own_cable_takes_its_box_and_clamps(library: Library) -> None:
    row = [opening("a", "Garage", "roller-door", cable=True), opening("b", "Yard", "gate", cable=True)]
    found = van(library, row, [WIDE] * 2, ControlUnit(layout="series", end_of_line_ohm=2200))
    assert counted(found, "Wide-gap contact") == (2, 1)
    assert counted(found, "Joint box, wide-gap contact") == (2, 1)
    assert counted(found, "Clamps for the tail, wide-gap contact") == (6, 1)
    assert counted(found, "Insulated joints, wide-gap contact") == (4, 1)
    assert counted(found, "End-of-line resistor, 2.2\u00a0kΩ") == (2, 1)


def test_a_sound_contact_stays(library: Library) -> None:
    row = [opening("a", "Hall", "hinged-door", old_contact=True, cable=True)]
    kept = van(library, row, [TRANSMITTER])
    assert counted(kept, "Transmitter with wired input") == (1, 1)
    assert not any(name.startswith(("Wired contact", "Alarm cable")) for name in kept)
    wired = van(library, row, [RECESSED], ControlUnit(layout="series", end_of_line_ohm=2200))
    assert "Recessed contact" not in wired
    assert counted(wired, "End-of-line resistor, 2.2\u00a0kΩ") == (1, 1)


@pytest.mark.parametrize(
    ("layout", "each"), [("series", 1), ("parallel", 1), ("double", 2), ("double-across", 2), (None, 1)]
)
def test_resistors_follow_the_layout_and_the_asked_value(library: Library, layout: str | None, each: int) -> None:
    row = [opening(f"d{n}", "Hall", "hinged-door") for n in range(3)]
    unit = ControlUnit(layout=layout, end_of_line_ohm=4700, second_resistor_ohm=4700)
    found = van(library, row, [RECESSED] * 3, unit)
    assert counted(found, "End-of-line resistor, 4.7\u00a0kΩ") == (3 * each, 1)
    used_for = "items#resistor.use" if layout else "items#resistor.use-layout-unknown"
    assert id_of(found["End-of-line resistor, 4.7\u00a0kΩ"].used_for) == used_for


@pytest.mark.parametrize(
    ("second", "name"), [(12000.0, "12\u00a0kΩ"), (None, "second of the pair, of the value the panel asks")]
)
def test_two_values_are_two_lines(library: Library, second: float | None, name: str) -> None:
    unit = ControlUnit(layout="double", end_of_line_ohm=4700, second_resistor_ohm=second)
    found = van(library, [opening("d", "Hall", "hinged-door")], [RECESSED], unit)
    assert counted(found, "End-of-line resistor, 4.7\u00a0kΩ") == (1, 1)
    assert counted(found, f"End-of-line resistor, {name}") == (1, 1)


def test_no_resistor_where_none_is_asked_and_no_value_where_none_is_known(library: Library) -> None:
    row = [opening("a", "Hall", "hinged-door")]
    assert not any("resistor" in name for name in van(library, row, [RECESSED], ControlUnit(layout="none")))
    found = van(library, row, [RECESSED], ControlUnit(layout="series"))
    assert "End-of-line resistor, of the value the panel asks" in found


def test_cable_is_added_up_and_rounded_up(library: Library) -> None:
    row = [
        opening("a", "Hall", "hinged-door", cable_length_m=12.2),
        opening("b", "Shop", "hinged-door", cable_length_m=7.1),
        opening("c", "Store", "hinged-door", cable=True, cable_length_m=30),
    ]
    found = van(library, row, [RECESSED] * 3)
    # 12.2 + 7.1 = 19.3, up to 20; with two metres for each run 23.3, up to the next five: 25
    assert counted(found, "Alarm cable, two-core pair, 22\u00a0AWG") == (20, 5)
    assert counted(found, "Metal cable clips or ties") == (67, 0), "one for every 300 mm"
    assert counted(found, "Cable label") == (6, 1)
    assert counted(found, "Insulated joints, recessed contact") == (6, 1)


def test_the_surveys_cable_spare_wins(library: Library) -> None:
    row = [opening("a", "Hall", "hinged-door", cable_length_m=10)]
    found = van(library, row, [RECESSED], cable_spare_m=0)
    assert counted(found, "Alarm cable, two-core pair, 22\u00a0AWG") == (10, 0)


@pytest.mark.parametrize(
    ("region", "more", "name"),
    [
        ("canada", {}, "Alarm cable, two-core pair, 22\u00a0AWG"),
        ("europe", {}, "Alarm cable, four-core, 0.22\u00a0mm²"),
        ("united-kingdom", {"cable_awg": 24}, "Alarm cable, four-core, 24\u00a0AWG"),
        ("united-states", {"cable_area_mm2": 0.5}, "Alarm cable, two-core pair, 0.5\u00a0mm²"),
        (None, {}, "Alarm cable, of the size and cores that are usual there"),
    ],
)
def test_cable_is_of_the_size_that_is_usual_there(
    library: Library, region: str | None, more: dict[str, Any], name: str
) -> None:
    row = [opening("a", "Hall", "hinged-door", cable_length_m=10, **more)]
    assert name in van(library, row, [RECESSED], region=region)


def test_a_run_that_nobody_measured_is_named_and_not_guessed(library: Library) -> None:
    found = van(library, [opening("a", "Hall", "hinged-door")], [RECESSED])
    assert counted(found, "Alarm cable, length not known") == (1, 0)
    assert not any(item.unit == "m" for item in found.values())


@given(st.lists(st.floats(0.1, 500), min_size=1, max_size=20))
def test_cable_always_covers_the_runs(shipped: Checked, lengths: list[float]) -> None:
    row = [opening(f"d{n}", "Hall", "hinged-door", cable_length_m=length) for n, length in enumerate(lengths)]
    item = next(one for one in van(shipped.library, row, [RECESSED] * len(row)).values() if one.unit == "m")
    assert item.quantity >= sum(lengths) - 1e-6
    assert item.quantity + item.spare >= sum(lengths) + 2 * len(lengths) - 1e-6
    assert item.quantity == ceil(item.quantity)


def test_sleeves_are_for_steel(library: Library) -> None:
    row = [opening("a", "Hall", "hinged-door", steel="frame"), opening("b", "Shop", "hinged-door", steel="none")]
    assert counted(van(library, row, [RECESSED] * 2), "Plastic sleeve for steel, recessed contact") == (2, 1)


def test_each_tool_goes_once_with_its_record_and_what_it_is_for(library: Library) -> None:
    found = van(library, WALL, [SURFACE] * 12).values()
    tools = [item for item in found if item.sort == "tool" and item.record]
    asked: list[str] = []
    for id_ in PROCEDURES:
        record = library.find("procedure", id_)
        assert record is not None
        asked += [f"tool/{tool}" for tool in record.listed("tools")]
    assert [item.record for item in tools] == list(dict.fromkeys(asked))
    assert all(item.quantity == 1 and item.used_for for item in tools)


def test_sorts_stand_together(library: Library) -> None:
    sorts = [item.sort for item in van(library, WALL, [SURFACE, RECESSED, TRANSMITTER] * 4).values()]
    assert sorts == sorted(sorts, key=("part", "consumable", "tool").index)


def test_an_opening_without_a_device_loads_nothing(library: Library) -> None:
    found = van(library, [opening("a", "Hall", "hinged-door")], [None])
    assert {item.sort for item in found.values()} == {"tool"}


def test_each_technician_has_the_tools_of_an_opening(library: Library) -> None:
    """Common practice: two at work on two openings share neither gap gauge nor ladder."""
    row = [opening(f"w{n}", "Room") for n in range(3)]
    for technicians in (1, 2):
        found = {item.record: item for item in van(library, row, [SURFACE] * 3, technicians=technicians).values()}
        assert found["tool/steel-rule"].quantity == technicians
        assert found["tool/test-magnet"].quantity == 1


def test_what_guards_against_a_hazard_is_on_the_van(library: Library) -> None:
    row = [opening("a", "Flat", "double-hung", leaf_material="wood"), opening("b", "Hall", "hinged-door")]
    found = van(library, row, [SURFACE] * 2)
    guards = {id_of(item.name): item for item in found.values() if item.sort == "tool" and not item.record}
    assert {
        "items#signal-tester",
        "items#guard-sprung-and-powered-doors",
        "items#guard-lead-paint",
        "items#guard-glass",
    } <= guards.keys()
    assert guards["items#guard-sprung-and-powered-doors"].openings == ("a",)
    wired = van(library, [opening("a", "Hall", "hinged-door", drill=False)], [RECESSED])
    assert "cable#trunking" in {id_of(item.name) for item in wired.values() if not item.record}
    assert not any("signal tester" in name for name in wired)


def test_each_part_goes_to_the_openings_that_take_it(library: Library) -> None:
    """A contact that stays gets none, and the loop of a transmitter is not the bag of a contact of the same class."""
    row = [opening("a", "Garage", "roller-door", old_contact=True, cable=True), opening("b", "Yard", "gate")]
    row += [opening("c", "Shed", "gate")]
    found = van(library, row, [WIDE, WIDE, TRANSMITTER], contact=WIDE)
    assert found["Wide-gap contact"].openings == ("b",)
    assert found["Wide-gap contact, for a transmitter"].openings == ("c",)
    assert found["Transmitter with wired input"].openings == ("c",)


def test_pads_are_fixed_before_screws_and_pulled_on_the_next_visit(library: Library) -> None:
    """Common practice: a pad reaches its strength after about a day."""
    row = [opening("a", "Hall", fire_rated=False, escape=False, drill=True)]
    row += [opening("b", "Study", fire_rated=False, escape=False, drill=False)]
    parts = at(library, row, [SURFACE] * 2)
    firm = house(library)
    done = work(parts, {}, 0, library, firm, rules_of(JobRules(), firm))
    assert list(done.of_opening) == ["b", "a"]
    pads = messages("latchside.planning.work")("pads")
    assert [any(pads in stage.words for stage in done.of_opening[id_]) for id_ in ("a", "b")] == [False, True]


def test_a_contact_on_a_loop_comes_with_what_holds_it(library: Library) -> None:
    gate = opening("gate", "Yard", "gate", leaf_material="steel")
    found = van(library, [gate], [TRANSMITTER], contact=WIDE)
    assert counted(found, "Bracket for the magnet, wide-gap contact") == (1, 1)
    assert counted(found, "Screws and anchors, wide-gap contact") == (4, 1)
    assert found["Screws and anchors, wide-gap contact"].openings == ("gate",)
    assert "Insulated joints, wide-gap contact" not in found, "those between contact and transmitter cable are counted"
    assert "Screws and anchors, wide-gap contact" not in van(
        library, [replace(gate, drill=False)], [TRANSMITTER], contact=WIDE
    )


@pytest.mark.parametrize(
    ("layout", "more"),
    [(None, 2), ("none", None), ("series", 2), ("parallel", None), ("double", 2), ("double-across", 2)],
)
def test_a_resistor_in_line_takes_a_joint_more(library: Library, layout: Any, more: int | None) -> None:
    """A resistor in line has two ends to join where its conductor had one: common practice."""
    row = [opening(name, name, "hinged-door", cable=True) for name in ("a", "b")]
    found = van(
        library, row, [RECESSED] * 2, ControlUnit(layout=layout, end_of_line_ohm=2200, second_resistor_ohm=2200)
    )
    assert counted(found, "Insulated joints, recessed contact") == (4, 1), "two ends of each contact"
    assert (counted(found, "Insulated joints, at the resistor")[0] if more else None) == more
    assert more or "Insulated joints, at the resistor" not in found


@pytest.mark.parametrize(("region", "metres", "cable"), [
    ("united-kingdom", 10, "Alarm cable, four-core, 0.22\u00a0mm²"),
    ("united-states", 20, "Alarm cable, two-core pair, 22\u00a0AWG"),
])  # fmt: skip
def test_two_loops_share_a_cable_of_four_cores(library: Library, region: str, metres: int, cable: str) -> None:
    """A loop takes two cores: common practice. A pair carries one, four cores carry both of a double door."""
    row = [opening("a", "Hall", "double-door", passive_leaf=True, cable_length_m=10)]
    found = van(library, row, [RECESSED], ControlUnit(layout="series", end_of_line_ohm=2200), region=region)
    assert found[cable].quantity == metres


def test_trunking_is_for_frames_alone_and_clips_hold_every_run(library: Library) -> None:
    """A cable held by glue alone hangs into the way out in a fire: BS 7671, 521.10.202, from memory."""
    row = [
        opening("a", "Hall", "hinged-door", drill=False, cable_length_m=12.2),
        opening("b", "Shop", "hinged-door", drill=False, cable_length_m=7),
        opening("c", "Store", "hinged-door", drill=True, cable_length_m=30),
    ]
    found = van(library, row, [RECESSED] * 3)
    trunking = found["Stuck trunking, for frames"]
    assert (trunking.quantity, trunking.unit, trunking.openings) == (2, "m", ("a", "b"))
    assert found["Metal cable clips or ties"].quantity == 167, "49.2 m, up to 50, one for every 300 mm"


@pytest.mark.parametrize("material", ["plastic", "glass"])
def test_no_screw_goes_where_pads_hold(library: Library, material: str) -> None:
    """Neither a plastic sash nor a pane takes a screw: common practice."""
    row = [opening("a", "Room", "casement", leaf_material=material, drill=True), opening("b", "Room", "casement")]
    found = van(library, row, [SURFACE] * 2)
    assert found["Screws, surface contact"].openings == ("b",)
    assert set(found["Adhesive pads, surface contact"].openings) == {"a", "b"}
