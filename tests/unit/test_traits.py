"""What a device is: read once from its record, and asked for by conditions."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from latchside.library import Library
from latchside.library.traits import Part, Traits, traits
from latchside.planning.holes import never

from .support import change, check, lay

PANE = "content/devices/pane-contact.yaml"
SHUT = "checklists/procedures/shut-leaf.yaml"
LATCH = "result: The latch is in its keep."


def made(senses: str = "plunger", reports: str = "loop", mounts: str = "surface", **parts: str) -> Traits:
    """Traits with parts by role, each with the way it is fixed."""
    return Traits(senses, reports, mounts, tuple(Part(role, role, 1, "in-set", how) for role, how in parts.items()), ())


def test_a_contact_needs_a_hole_unless_a_pad_can_bear_it() -> None:
    assert not made(sensor="surface", pad="surface").needs_hole
    assert made(sensor="surface", screw="surface").needs_hole
    assert made(sensor="surface").needs_hole  # nobody says what holds it
    assert made(mounts="bracket", sensor="bracket", pad="surface").needs_hole
    assert made(mounts="drilled", sensor="drilled", pad="surface").needs_hole
    assert made(sensor="surface", magnet="drilled", pad="surface").needs_hole  # one half is enough
    assert not made("loop", "loop-by-radio", transmitter="surface", screw="surface").needs_hole  # it goes on the wall


def test_the_shipped_devices_are_what_they_are(shipped_library: Library) -> None:
    known = {one.id: traits(one) for one in shipped_library.of("device")}
    assert {id_ for id_, one in known.items() if one.drilled} == {"recessed-contact", "steel-door-contact"}
    assert {id_ for id_, one in known.items() if one.link == "radio"} == {"surface-contact", "wired-input-transmitter"}
    assert {id_ for id_, one in known.items() if not one.magnetic} == {"wired-input-transmitter"}
    assert known["surface-contact"].count("spacer") == 2


@pytest.mark.parametrize(
    ("asked", "ids"),
    [
        ("{reports: [radio]}", ("pane-contact",)),
        ("{reports: [loop, radio], senses: [reed-and-magnet]}", ("pane-contact",)),
        ("{parts: [cell]}", ("pane-contact",)),
        ("{inputs: [wired-contact], mounts: [surface]}", ("pane-contact",)),
        ("{mounts: [drilled]}", ()),
        ("{reports: [radio], senses: [tilt]}", ()),
        ("[pane-contact]", ("pane-contact",)),
    ],
)
def test_a_condition_becomes_the_devices_that_fit_it(asked: str, ids: tuple[str, ...], tmp_path: Path) -> None:
    root = lay(tmp_path)
    change(root, SHUT, LATCH, f"{LATCH[:-1]}, only: {asked}")
    procedure: Any = check(root).library.find("procedure", "shut-leaf")
    assert procedure["steps"][0]["do"][0]["only"] == ids


def test_a_part_in_a_hole_counts_as_drilled(tmp_path: Path) -> None:
    root = lay(tmp_path)
    change(root, PANE, "role: magnet, supplied: in-set,", "role: magnet, supplied: in-set, mounts: drilled,")
    library = check(root).library
    (device,) = library.of("device")
    assert [one.id for one in library.devices({"mounts": ["drilled"]})] == ["pane-contact"]
    fields = {test["field"] for told in never(device) for test in told["when"]}
    assert {"fire-rated", "escape", "drill", "glazed"} <= fields


def test_a_condition_names_no_record(tmp_path: Path) -> None:
    """Only an id is a reference: what fits traits today may not fit them tomorrow."""
    root = lay(tmp_path)
    before = len(check(root).library.links)
    change(root, SHUT, LATCH, f"{LATCH[:-1]}, only: {{reports: [radio]}}")
    assert len(check(root).library.links) == before


def test_a_word_that_is_none_is_told(tmp_path: Path) -> None:
    root = lay(tmp_path)
    change(root, SHUT, LATCH, f"{LATCH[:-1]}, only: {{reports: [radoi]}}")
    (found,) = [one for one in check(root).findings if one.code == "unknown-word"]
    assert "radio" in found.expected
