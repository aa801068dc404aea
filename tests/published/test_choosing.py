"""Worked openings whose class is a fact of the trade.

Each has where the fact is from beside it. PRACTICE is common practice: any experienced lead would say the same.
MEMORY is a source quoted from memory, to be checked against the edition in force.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any

import pytest

from latchside.jobs.choose import choice_problems, choose
from latchside.jobs.survey import ControlUnit, Opening, Site, Wall
from latchside.library import Library

PRACTICE = "common practice"
NFPA_80 = "from memory: NFPA 80, a listed fire door is drilled on site only as its listing allows"
UK_DOORS = "from memory: practice in the United Kingdom, a certified fire door takes no hole that was not tested"
ESCAPE = "common practice under every local code: nothing that weakens or hinders an escape door"
ERC = "common practice; steel of any thickness that doors have shuts in a signal of hundreds of MHz"

SOUND = Opening(
    id="one", place="Hall", kind="hinged-door", fire_rated=False, escape=False, play_mm=1, gap_mm=4, step_mm=0,
    use="other", height_m=2, distance_m=8, walls=(), floors=0, outer_wall="no", cable=False, old_contact=False,
    outdoors=False, drill=True, wish="none", leaf_material="wood", frame_material="wood", steel="none",
)  # fmt: skip
PLASTIC: dict[str, Any] = {"leaf_material": "plastic", "frame_material": "plastic"}
STEEL: dict[str, Any] = {"leaf_material": "steel", "frame_material": "steel", "steel": "both"}
ALUMINIUM: dict[str, Any] = {"leaf_material": "aluminium", "frame_material": "aluminium"}

SURFACE, RECESSED, TRANSMITTER = "surface-contact", "recessed-contact", "wired-input-transmitter"
WIDE = "wide-reach-contact"


@dataclass(frozen=True)
class Worked:
    """An opening by what differs from a sound wooden door without cable, its class, and where that is from."""

    name: str
    device: str | None
    source: str
    changes: dict[str, Any] = field(default_factory=dict)
    problems: tuple[str, ...] = ()


WORKED = (
    Worked("a wooden front door with cable", RECESSED, PRACTICE, {"cable": True, "use": "entry-route"}),
    Worked("a wooden door without cable", SURFACE, PRACTICE),
    Worked("a plastic casement without cable", SURFACE, PRACTICE, {"kind": "casement", **PLASTIC}),
    Worked("a plastic casement is not drilled for a cable", SURFACE, PRACTICE,
           {"kind": "casement", **PLASTIC, "cable": True}),
    Worked("a leaf clad in steel without cable takes no radio body", TRANSMITTER, ERC, STEEL),
    Worked("a leaf clad in steel, tight gap, with cable", WIDE, PRACTICE, {**STEEL, "cable": True}),
    Worked("a leaf clad in steel, tight gap, with cable and a wish for nothing in sight", RECESSED, PRACTICE,
           {**STEEL, "cable": True, "wish": "hidden"}),
    Worked("a steel door without cable, whose run was measured", WIDE, PRACTICE, {**STEEL, "cable_length_m": 20}),
    Worked("steel, and a gap that steel leaves a small set no reach for", WIDE, PRACTICE,
           {**STEEL, "cable": True, "gap_mm": 12}),
    Worked("a fire-rated wooden door", SURFACE, NFPA_80, {"fire_rated": True}, ("life-safety",)),
    Worked("a fire-rated wooden door with a wish for nothing in sight", SURFACE, UK_DOORS,
           {"fire_rated": True, "wish": "hidden", "cable": True}, ("life-safety",)),
    Worked("an escape door of steel", TRANSMITTER, ESCAPE, {**STEEL, "escape": True}, ("life-safety",)),
    Worked("a roller door", TRANSMITTER, PRACTICE, {"kind": "roller-door", **STEEL, "gap_mm": 20, "play_mm": 12}),
    Worked("an up-and-over door", TRANSMITTER, PRACTICE, {"kind": "up-and-over", **STEEL, "play_mm": 15}),
    Worked("a gate", TRANSMITTER, PRACTICE, {"kind": "gate", **STEEL, "outdoors": True}),
    Worked("a roller door with cable", WIDE, PRACTICE,
           {"kind": "roller-door", **STEEL, "gap_mm": 20, "play_mm": 12, "cable": True}),
    Worked("a roller door whose run was measured", WIDE, PRACTICE,
           {"kind": "roller-door", **STEEL, "gap_mm": 20, "play_mm": 12, "outdoors": True, "cable_length_m": 22}),
    Worked("an up-and-over door with cable", WIDE, PRACTICE, {"kind": "up-and-over", **STEEL, "cable": True}),
    Worked("a wooden gate with cable", WIDE, PRACTICE, {"kind": "gate", "outdoors": True, "cable": True}),
    Worked("a wooden double-hung window without cable", SURFACE, PRACTICE, {"kind": "double-hung"}),
    Worked("a wooden double-hung window with cable at the head", RECESSED, PRACTICE,
           {"kind": "double-hung", "cable": True}),
    Worked("a tilt-and-turn window", SURFACE, PRACTICE, {"kind": "tilt-and-turn", **PLASTIC}),
    Worked("an aluminium lift-and-slide door", SURFACE, PRACTICE, {"kind": "lift-and-slide", **ALUMINIUM}),
    Worked("a roof window that stays dry", SURFACE, PRACTICE, {"kind": "roof-window"}),
    Worked("a roof window that does not", TRANSMITTER, PRACTICE, {"kind": "roof-window", "outdoors": True}),
    Worked("a hatch", SURFACE, PRACTICE, {"kind": "hatch"}),
    Worked("a wooden door that rain reaches, without cable", TRANSMITTER, PRACTICE, {"outdoors": True}),
    Worked("a wooden door that rain reaches, with cable", RECESSED, PRACTICE, {"outdoors": True, "cable": True}),
    Worked("a sound contact whose cable ends near", TRANSMITTER, PRACTICE, {"old_contact": True}),
    Worked("a sound contact on a sound cable", RECESSED, PRACTICE, {"old_contact": True, "cable": True}),
    Worked("a wooden door in a house lined with foil", RECESSED, PRACTICE,
           {"walls": (Wall("foil"),), "outer_wall": "efficient"}),
    Worked("nothing in sight, wood, without cable", TRANSMITTER, PRACTICE, {"wish": "hidden"}),
    Worked("nothing in sight, wood, with cable", RECESSED, PRACTICE, {"wish": "hidden", "cable": True}),
    Worked("a frameless glass door", SURFACE, PRACTICE, {"leaf_material": "glass", "frame_material": "aluminium"}),
    Worked("a listed door that may not be drilled, with cable", SURFACE, PRACTICE, {"drill": False, "cable": True}),
    Worked("a wooden door with a gap beyond half the reach", TRANSMITTER, PRACTICE, {"gap_mm": 12}),
    Worked("a gap beyond every reach", None, PRACTICE, {"kind": "tilt-and-turn", **PLASTIC, "gap_mm": 25},
           ("no-class-fits",)),
)  # fmt: skip


@pytest.mark.parametrize("one", WORKED, ids=lambda one: one.name)
def test_the_class_is_that_of_the_trade(one: Worked, shipped_library: Library) -> None:
    opening = replace(SOUND, **one.changes)
    choice = choose(opening, Site(), ControlUnit(), shipped_library)
    assert choice.device == one.device, one.source
    found = [problem.code for problem in choice_problems(opening, choice, shipped_library)]
    assert tuple(found) == one.problems


@pytest.mark.parametrize(
    ("changes", "contact"),
    [
        ({"kind": "roller-door", **STEEL, "gap_mm": 20, "play_mm": 12}, WIDE),
        ({"kind": "gate", "outdoors": True}, WIDE),
        ({**STEEL, "escape": True}, WIDE),
        ({"gap_mm": 12}, WIDE),
        ({"wish": "hidden"}, RECESSED),
        ({"kind": "roof-window", "outdoors": True}, None),  # no wired class of the library is made for it
        ({"old_contact": True}, None),  # the sound one stays
    ],
)
def test_a_transmitter_names_the_contact_on_its_loop(
    changes: dict[str, Any], contact: str | None, shipped_library: Library
) -> None:
    """Common practice: where no cable can be run, the contact stays at the metal and the radio is set apart."""
    choice = choose(replace(SOUND, **changes), Site(), ControlUnit(), shipped_library)
    assert (choice.device, choice.contact) == (TRANSMITTER, contact)
    assert any("On its loop" in line for line in choice.reasons) == bool(contact)


@pytest.mark.parametrize("kind", ["roller-door", "up-and-over", "gate"])
@pytest.mark.parametrize("walls", [(), (Wall("foil"), Wall("metal"))])
@pytest.mark.parametrize("leaf", [STEEL, ALUMINIUM, {}])
@pytest.mark.parametrize("gap", [5.0, 20.0])
@pytest.mark.parametrize("outdoors", [True, False])
def test_a_heavy_leaf_is_wired_where_a_cable_can_be_run_and_only_there(
    kind: str, walls: tuple[Wall, ...], leaf: dict[str, Any], gap: float, outdoors: bool, shipped_library: Library
) -> None:
    """Common practice, whatever the leaf, its gap, the weather and the way of the radio."""
    outer = "efficient" if walls else "no"
    opening = replace(SOUND, kind=kind, walls=walls, outer_wall=outer, gap_mm=gap, outdoors=outdoors, **leaf)
    for changes, device in (({}, TRANSMITTER), ({"cable": True}, WIDE), ({"cable_length_m": 30.0}, WIDE)):
        told = replace(opening, **dict[str, Any](changes))
        assert choose(told, Site(), ControlUnit(), shipped_library).device == device, changes


def test_play_near_the_lost_motion_is_mended_first(shipped_library: Library) -> None:
    """Common practice: no contact is chosen for a fault of the leaf. The class stays, and the reason says so."""
    opening = replace(SOUND, play_mm=4.5)
    choice = choose(opening, Site(), ControlUnit(), shipped_library)
    assert choice.device == SURFACE
    assert any("mended before any contact is chosen" in line for line in choice.against)


def test_what_speaks_against_steel_is_said_both_ways(shipped_library: Library) -> None:
    """Steel takes reach from the magnet and way from the radio; both reasons stand beside the class passed over."""
    choice = choose(replace(SOUND, **STEEL), Site(), ControlUnit(), shipped_library)
    surface = next(one for one in choice.passed_over if one.device == SURFACE)
    said = " ".join(surface.why)
    assert "steals the field of the magnet" in said
    assert "shadows the radio" in said


@pytest.mark.parametrize("answer", ["fire_rated", "escape"])
def test_no_door_of_life_safety_is_ever_drilled(answer: str, shipped_library: Library) -> None:
    """NFPA 80 and practice in the United Kingdom, both from memory: whatever else is true of the door."""
    cases: tuple[dict[str, Any], ...] = (
        {}, {"cable": True}, {"wish": "hidden", "cable": True}, {"old_contact": True, "cable": True},
    )  # fmt: skip
    for changes in cases:
        opening = replace(SOUND, **changes, **dict[str, Any]({answer: True}))
        choice = choose(opening, Site(), ControlUnit(), shipped_library)
        assert choice.device != RECESSED
        recessed = next(one for one in choice.passed_over if one.device == RECESSED)
        assert recessed.ruled_out
