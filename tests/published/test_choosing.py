"""Worked openings whose class is a fact of the trade.

Each has where the fact is from beside it. PRACTICE is common practice: any experienced lead would say the same.
MEMORY is a source quoted from memory, to be checked against the edition in force.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Any

import pytest

from latchside.library import Library
from latchside.planning.choose import choice_problems, choose
from latchside.surveys.survey import ControlUnit, Opening, Site, Wall

from ..each import each

PRACTICE = "common practice"
NFPA_80 = "from memory: NFPA 80, a listed fire door is drilled on site only as its listing allows"
STEEL_DOORS = "common practice: a steel door takes a contact in plastic sleeves, or a strong magnet on spacers"
UK_DOORS = "from memory: practice in the United Kingdom, a certified fire door takes no hole that was not tested"
ESCAPE = "common practice under every local code: nothing that weakens or hinders an escape door"
LATE = "training material in North America: a door opens 2 in at most before its alarm; a wide reach lets go later"
ERC = "common practice; steel of any thickness that doors have shuts in a signal of hundreds of MHz"

SOUND = Opening(
    id="one", place="Hall", kind="hinged-door", fire_rated=False, escape=False, play_mm=1, gap_mm=4, step_mm=0,
    use="other", height_m=2, distance_m=8, walls=(), floors=0, outer_wall="no", cable=False, old_contact=False,
    outdoors=False, drill=True, wish="none", leaf_material="wood", frame_material="wood", steel="none", glazed=False,
)  # fmt: skip
PLASTIC: dict[str, Any] = {"leaf_material": "plastic", "frame_material": "plastic"}
STEEL: dict[str, Any] = {"leaf_material": "steel", "frame_material": "steel", "steel": "both"}
ALUMINIUM: dict[str, Any] = {"leaf_material": "aluminium", "frame_material": "aluminium"}

SURFACE, RECESSED, TRANSMITTER = "surface-contact", "recessed-contact", "wired-input-transmitter"
WIDE, STEEL_DOOR, WIRED_SURFACE = "wide-reach-contact", "steel-door-contact", "wired-surface-contact"


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
    Worked("a plastic casement is not drilled for a cable", WIRED_SURFACE, PRACTICE,
           {"kind": "casement", **PLASTIC, "cable": True}),
    Worked("a plastic casement with a cable, where no hole is allowed", WIRED_SURFACE, PRACTICE,
           {"kind": "casement", **PLASTIC, "cable": True, "drill": False}),
    Worked("a wooden window with a cable, where no hole is allowed", WIRED_SURFACE, PRACTICE,
           {"kind": "casement", "cable": True, "drill": False}),
    Worked("a tilt-and-turn window with a cable", WIRED_SURFACE, PRACTICE,
           {"kind": "tilt-and-turn", **PLASTIC, "cable": True}),
    Worked("an aluminium sliding door with a cable", WIRED_SURFACE, PRACTICE,
           {"kind": "sliding", **ALUMINIUM, "cable": True}),
    Worked("a frameless glass door with a cable", WIRED_SURFACE, PRACTICE,
           {"leaf_material": "glass", "frame_material": "aluminium", "cable": True}),
    Worked("a leaf clad in steel without cable takes no radio body", TRANSMITTER, ERC, STEEL),
    Worked("a steel door, tight gap, with cable and holes allowed", STEEL_DOOR, STEEL_DOORS, {**STEEL, "cable": True}),
    Worked("a steel door with cable and a wish for nothing in sight", STEEL_DOOR, STEEL_DOORS,
           {**STEEL, "cable": True, "wish": "hidden"}),
    Worked("a steel double door with cable", STEEL_DOOR, STEEL_DOORS,
           {**STEEL, "kind": "double-door", "passive_leaf": True, "cable": True}),
    Worked("a steel door without cable, whose run was measured", STEEL_DOOR, STEEL_DOORS,
           {**STEEL, "cable_length_m": 20}),
    Worked("a steel door out of doors, with cable", STEEL_DOOR, STEEL_DOORS,
           {**STEEL, "outdoors": True, "cable": True}),
    Worked("a steel door with cable, where no hole is allowed", WIRED_SURFACE, STEEL_DOORS,
           {**STEEL, "cable": True, "drill": False}),
    Worked("a steel door with cable and a gap that is too wide for holes in steel", WIRED_SURFACE, STEEL_DOORS,
           {**STEEL, "cable": True, "gap_mm": 12}),
    Worked("a heavy steel door with a gap beyond the others: a wide reach trips too late", WIRED_SURFACE, LATE,
           {**STEEL, "cable": True, "gap_mm": 20}),
    Worked("a steel fire door with cable", WIRED_SURFACE, NFPA_80, {**STEEL, "cable": True, "fire_rated": True},
           ("life-safety",)),
    Worked("a steel fire and escape door with cable, where no hole is allowed", WIRED_SURFACE, NFPA_80,
           {**STEEL, "cable": True, "fire_rated": True, "escape": True, "drill": False}, ("life-safety",)),
    Worked("a steel fire door with a sound contact on a sound cable", WIRED_SURFACE, PRACTICE,
           {**STEEL, "cable": True, "fire_rated": True, "old_contact": True}, ("life-safety",)),
    Worked("a wooden escape door with cable", WIRED_SURFACE, ESCAPE, {"cable": True, "escape": True}, ("life-safety",)),
    Worked("a fire-rated wooden door", SURFACE, NFPA_80, {"fire_rated": True}, ("life-safety",)),
    Worked("a fire-rated wooden door with cable and a wish for nothing in sight", WIRED_SURFACE, UK_DOORS,
           {"fire_rated": True, "wish": "hidden", "cable": True}, ("life-safety", "wish-cannot-be-met")),
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
    Worked("a listed door that may not be drilled, with cable", WIRED_SURFACE, PRACTICE,
           {"drill": False, "cable": True}),
    Worked("a wooden door with a gap beyond half the reach", SURFACE, LATE, {"gap_mm": 12}),
    Worked("a gap beyond every reach", None, PRACTICE, {"kind": "tilt-and-turn", **PLASTIC, "gap_mm": 30},
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
        (STEEL, STEEL_DOOR),
        ({**STEEL, "drill": False}, WIRED_SURFACE),
        ({**STEEL, "escape": True}, WIRED_SURFACE),
        ({"wish": "hidden"}, RECESSED),
        ({"kind": "roof-window", "outdoors": True}, WIRED_SURFACE),
        ({"old_contact": True}, None),  # the sound one stays
    ],
)
def test_a_transmitter_names_the_contact_on_its_loop(
    changes: dict[str, Any], contact: str | None, shipped_library: Library
) -> None:
    """Common practice: where no cable can be run, the contact stays at the metal and the radio is set apart."""
    choice = choose(replace(SOUND, **changes), Site(), ControlUnit(), shipped_library)
    assert (choice.device, choice.contact) == (TRANSMITTER, contact)
    on_loop = "planning/choose#on-loop"
    assert any(getattr(line, "id", "") == on_loop for line in choice.reasons) == bool(contact)


@each("kind", ["roller-door", "up-and-over", "gate"])
@each("walls", [(), (Wall("foil"), Wall("metal"))])
@each("leaf", [STEEL, ALUMINIUM, {}])
@each("gap", [5.0, 20.0])
@each("outdoors", [True, False])
def test_a_heavy_leaf_is_wired_where_a_cable_can_be_run_and_only_there(
    kind: str, walls: tuple[Wall, ...], leaf: dict[str, Any], gap: float, outdoors: bool, shipped_library: Library
) -> None:
    """Common practice, whatever the leaf, its gap, the weather and the way of the radio."""
    outer = "efficient" if walls else "no"
    opening = replace(SOUND, kind=kind, walls=walls, outer_wall=outer, gap_mm=gap, outdoors=outdoors, **leaf)
    for changes, device in (({}, TRANSMITTER), ({"cable": True}, WIDE), ({"cable_length_m": 30.0}, WIDE)):
        told = replace(opening, **dict[str, Any](changes))
        assert choose(told, Site(), ControlUnit(), shipped_library).device == device, changes


def test_play_past_the_break_distance_is_adjusted_first(shipped_library: Library) -> None:
    """Common practice: no contact is chosen for a fault of the leaf. The class stays, and the reason says so.

    The set breaks at 23 mm, less a tenth of tolerance and 3 % of warmth at 20.1 mm. Play that stays short of it is no
    reason against a contact: at a gap of 5 mm, 4 mm of play are harmless.
    """
    loose = choose(replace(SOUND, gap_mm=5, play_mm=16), Site(), ControlUnit(), shipped_library)
    assert loose.device == SURFACE
    assert any("adjusted before any contact is chosen" in line for line in loose.against)
    harmless = choose(replace(SOUND, gap_mm=5, play_mm=4), Site(), ControlUnit(), shipped_library)
    assert harmless.device == SURFACE
    assert not any("play" in line.lower() for line in harmless.against)


@pytest.mark.parametrize("kind", ["hinged-door", "double-door", "sliding", "hatch"])
@pytest.mark.parametrize("changes", [{}, {"cable": True}, {**STEEL, "cable": True}, {**STEEL, "cable_length_m": 20}])
def test_a_contact_that_trips_past_every_limit_is_not_planned(
    kind: str, changes: dict[str, Any], shipped_library: Library
) -> None:
    """A wide reach lets go at some 75 mm of travel. A door may open 2 in, 50.8 mm, by training material."""
    choice = choose(replace(SOUND, kind=kind, **changes), Site(), ControlUnit(), shipped_library)
    assert WIDE not in (choice.device, choice.contact)
    wide = next(one for one in choice.passed_over if one.device == WIDE)
    assert wide.ruled_out
    assert any("before the contact trips" in line for line in wide.why)


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
        STEEL, {**STEEL, "cable": True}, {**STEEL, "wish": "hidden", "cable": True},
    )  # fmt: skip
    for changes in cases:
        opening = replace(SOUND, **changes, **dict[str, Any]({answer: True}))
        choice = choose(opening, Site(), ControlUnit(), shipped_library)
        assert choice.device not in (RECESSED, STEEL_DOOR)
        assert choice.contact not in (RECESSED, STEEL_DOOR)
        out = {one.device for one in choice.passed_over if one.ruled_out}
        assert {RECESSED, STEEL_DOOR} <= out


@each("kind", ["hinged-door", "double-door"])
@each("gap", [3.0, 6.0, 10.0, 14.0])
@each("drill", [True, False, None])
@each("rated", [True, False])
@each("outdoors", [True, False])
@each("way", [{"cable": True}, {"cable_length_m": 25.0}, {}])
def test_a_steel_door_that_hangs_true_never_takes_a_wide_reach_contact(
    kind: str,
    gap: float,
    drill: bool | None,
    rated: bool,
    outdoors: bool,
    way: dict[str, Any],
    shipped_library: Library,
) -> None:
    """Common practice: that housing is for doors that sway. A hinged door takes a small contact made for steel."""
    opening = replace(
        SOUND, **STEEL, kind=kind, gap_mm=gap, drill=drill, fire_rated=rated, outdoors=outdoors, **dict[str, Any](way)
    )
    choice = choose(opening, Site(), ControlUnit(), shipped_library)
    assert WIDE not in (choice.device, choice.contact)
    if "cable" in way or (way and gap < 10):
        assert choice.device in (STEEL_DOOR, WIRED_SURFACE)


@each("kind", ["hinged-door", "casement", "double-hung", "tilt-and-turn", "sliding", "hatch"])
@each("leaf", [STEEL, ALUMINIUM, PLASTIC, {}])
@each("why", [{"drill": False}, {"fire_rated": True}, {"escape": True}])
def test_a_cable_is_used_where_no_hole_is_allowed(
    kind: str, leaf: dict[str, Any], why: dict[str, Any], shipped_library: Library
) -> None:
    """Common practice: what forbids a hole does not forbid a wire. A cable that is there is not left for a battery."""
    opening = replace(SOUND, kind=kind, cable=True, **leaf, **why)
    assert choose(opening, Site(), ControlUnit(), shipped_library).device == WIRED_SURFACE
