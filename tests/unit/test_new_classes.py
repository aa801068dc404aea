"""Two classes that Latchside does not ship, a plunger contact and a tilt sensor, added as records and nothing else.

They lie in `tests/classes/`, written as the guide for maintainers says.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from latchside.figures.catalogue import catalogue
from latchside.library import Library, build_library
from latchside.packs.data import plan_data
from latchside.pages.render import Writer
from latchside.planning.choose import choose
from latchside.planning.make import make_plan
from latchside.planning.plan import Plan
from latchside.project import Checked, check_project
from latchside.read.tree import RawRecord, read_project
from latchside.read.yaml_text import read_text
from latchside.root import ROOT
from latchside.rules import all_rules
from latchside.surveys.survey import ControlUnit, Opening, Override, Site, Survey

from .support import change

CLASSES = ROOT / "tests" / "classes"
PLUNGER, TILT = "content/devices/plunger-contact.yaml", "content/devices/tilt-sensor.yaml"
DEPTH = "  hole-depth: {value: 40, unit: mm, status: typical}\n"
MAGNET = re.compile(r"\b(?<!test )(?:magnets?|reeds?|spacers?)\b", re.IGNORECASE)
"""Words that no reader of these two may meet; a test magnet finds steel at any opening."""
DOOR = Opening(
    "door", "Hall", "hinged-door", use="other", cable=True, old_contact=False, fire_rated=False, escape=False,
    drill=True, leaf_material="wood", frame_material="wood", steel="none", glazed=False, gap_mm=3.0, play_mm=1.0,
    hardware=("magnetic-lock",), height_m=2.0, cable_length_m=10.0,
)  # fmt: skip
GARAGE = Opening(
    "garage", "Garage", "up-and-over", use="other", cable=False, old_contact=False, fire_rated=False, escape=False,
    drill=True, leaf_material="steel", frame_material="steel", steel="both", gap_mm=10.0, play_mm=5.0, distance_m=8.0,
)  # fmt: skip


def copy(root: Path) -> Path:
    """A copy of the project with the two classes in it."""
    for folder in ("content", "checklists", "shared"):
        shutil.copytree(ROOT / folder, root / folder)
    (root / "schema").symlink_to(ROOT / "schema")
    for folder in ("content", "checklists"):
        shutil.copytree(CLASSES / folder, root / folder, dirs_exist_ok=True)
    rows = (CLASSES / "work-times-rows.yaml").read_text("utf-8").rstrip()
    change(root, "shared/tables/work-times.yaml", "\nreads:", f"\n{rows}\nreads:")
    return root


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return copy(tmp_path_factory.mktemp("grown"))


@pytest.fixture(scope="module")
def grown(root: Path) -> Checked:
    return check_project(root)


@pytest.fixture(scope="module")
def raw(root: Path) -> tuple[RawRecord, ...]:
    return read_project(root).records


@pytest.fixture(scope="module")
def library(grown: Checked) -> Library:
    return grown.library


def changed(raw: tuple[RawRecord, ...], file: str, *changes: tuple[str, str]) -> list[RawRecord]:
    """The records with the text of one of them changed."""
    (one,) = (one for one in raw if one.file == file)
    text = (CLASSES / file).read_text("utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return [*(other for other in raw if other is not one), replace(one, document=read_text(text, file))]


def found(library: Library, code: str) -> list[str]:
    """What one rule finds."""
    (rule,) = (rule for rule in all_rules() if rule.code == code)
    return [one.found for one in rule.check(library)]


def planned(library: Library, *openings: Opening) -> Plan:
    survey = Survey(
        "t", "T", openings, site=Site(region="europe"),
        control_unit=ControlUnit(frequency_mhz=868.3, layout="series", end_of_line_ohm=2200.0),
    )  # fmt: skip
    return make_plan(survey, library, catalogue(), date(2026, 8, 31))


def texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for below in value.values():
            yield from texts(below)
    elif isinstance(value, list):
        for below in value:
            yield from texts(below)


def said_of(plan: Plan) -> list[str]:
    """All that a plan says but of the classes that were passed over, its tools and its questions."""
    data = plan_data(plan)
    for one in data["openings"]:
        del one["choice"]["passed_over"], one["opening"]
    data["items"] = [one for one in data["items"] if one["sort"] != "tool"]
    return [text for key in ("openings", "problems", "zones", "items", "work", "cautions") for text in texts(data[key])]


def test_the_check_finds_nothing(grown: Checked) -> None:
    assert [f"{one.file}:{one.place.line} {one.code}: {one.found}" for one in grown.findings] == []


def test_a_plunger_contact_is_planned_by_what_its_record_says(library: Library) -> None:
    plan = planned(library, DOOR)
    (one,) = plan.openings
    assert one.choice.device == "plunger-contact"
    assert one.fixing is not None
    assert one.fixing.sensor.startswith("In the rebate of the frame at the hinge side")
    assert one.fixing.hold.startswith("Drilled: 18\xa0mm (0.71\xa0in) across and 40\xa0mm (1.57\xa0in) deep")
    assert (one.fixing.magnet, one.fixing.spacer) == ("", "")
    assert [zone.position for zone in plan.zones] == ["W1"]
    assert {line.figure for line in one.figures} == {"cable-resistance", "loop-states", "ladder"}
    assert "loop-shut" in {value.measure for value in one.expected}
    assert not {"fit-gap", "check-in"} & {value.measure for value in one.expected}
    assert "hidden-services" in one.cautions
    assert "fix-plunger-contact" in {id_ for stage in one.stages for id_ in stage.procedures}
    parts = {item.name: item.quantity for item in plan.items if item.sort != "tool"}
    assert parts["Plunger contact"] == 1
    assert parts["End-of-line resistor, 2.2\xa0kΩ"] == 1
    assert parts["Insulated joints, plunger contact"] == 2


def test_a_tilt_sensor_is_planned_by_what_its_record_says(library: Library) -> None:
    plan = planned(library, GARAGE)
    (one,) = plan.openings
    assert one.choice.device == "tilt-sensor"
    assert one.fixing is not None
    assert one.fixing.sensor.startswith("On the inner face of the door")
    assert [zone.position for zone in plan.zones] == ["R1"]
    assert {line.name for line in one.figures} == {"Radio margin", "Check-ins", "Battery"}
    assert {"lithium-cells", "swallowed-cells"} <= set(one.cautions)
    assert not {"loop-shut", "fit-gap"} & {value.measure for value in one.expected}
    assert any(item.name == "Battery, tilt sensor" and item.quantity == 1 for item in plan.items)


def test_nobody_is_told_of_a_magnet_that_is_not_there(library: Library) -> None:
    plan = planned(library, replace(DOOR, hardware=()), GARAGE)
    assert [text for text in said_of(plan) if MAGNET.search(text)] == []
    assert "magnets-and-pacemakers" not in {one.caution for one in plan.cautions}


@pytest.mark.parametrize("id_", ["plunger-contact", "tilt-sensor"])
def test_the_pages_of_its_work_speak_of_no_magnet(id_: str, library: Library) -> None:
    device = library.find("device", id_)
    assert device is not None
    pages = dict(Writer(library).stages(device))
    work = {path: text for path, text in pages.items() if not path.endswith(("survey/index.md", "choose/index.md"))}
    assert len(work) > 10
    commands = [
        (path, told)
        for path, text in work.items()
        for told in re.findall(r'<p class="ls-(?:do|result|why|note)">.*?</p>', text)
        if MAGNET.search(re.sub(r"<[^>]+>", "", told))
    ]
    assert commands == []
    figures = Writer(library).record(device)
    assert "Make distance, and what steel takes" not in figures


def test_a_plunger_is_never_drilled_where_no_hole_may_be(library: Library, raw: tuple[RawRecord, ...]) -> None:
    """Nor where its profile forgets all that would rule it out, and its depth too. The check would say so."""
    forgetful = build_library(changed(raw, PLUNGER, ("    rules_out: true\n", ""), (DEPTH, "")), library.schemas)
    assert found(forgetful, "hole-ruled-out")
    assert found(forgetful, "trait-data")
    barred = [
        replace(DOOR, fire_rated=True), replace(DOOR, escape=True), replace(DOOR, drill=False),
        replace(DOOR, glazed=True, rail_depth_mm=90.0),  # nobody says how deep its hole is
    ]  # fmt: skip
    for opening in barred:
        assert ruled_out(opening, "plunger-contact", forgetful)
    assert all(ruled_out(opening, "plunger-contact", library) for opening in barred[:3])


def ruled_out(opening: Opening, device: str, library: Library) -> bool:
    choice = choose(opening, Site(), ControlUnit(), library)
    return any(one.device == device and one.ruled_out for one in choice.passed_over)


def test_one_that_is_chosen_by_hand_for_a_fire_door_is_a_problem(library: Library) -> None:
    told = replace(DOOR, fire_rated=True, override=Override("plunger-contact", "The lead wants it."))
    plan = planned(library, told)
    assert "override-ruled-out" in {one.code for one in plan.problems}
    fixing = plan.openings[0].fixing
    assert fixing is not None
    assert "No new hole" in fixing.hold


@pytest.mark.parametrize(
    ("file", "old", "new", "code", "said"),
    [
        (TILT, "openings: [up-and-over]", "openings: [up-and-over, gate]", "no-place",
         "nothing says where tilt-sensor is fixed on: gate"),
        (TILT, "prove-check-in, ", "", "must-list", "procedures without prove-check-in"),
        (TILT, "lithium-cells, ", "", "must-list", "cautions without lithium-cells"),
        (TILT, "try: [try-radio-margin]", "try: [try-gap, try-radio-margin]", "must-list", "try-gap, which is not for"),
        (TILT, "  check-in: {value: 60, unit: min, tolerance: {percent: 10}, status: typical}\n", "", "trait-data",
         "nothing states the value check-in"),
        (TILT, "checklists: [survey", "checklists: [position, survey", "nothing-for-device", "position, which has no"),
        (TILT, "kind: own-sensor", "kind: other", "traits-agree", "other as the first input"),
        (PLUNGER, "checklists: [survey", "checklists: [radio-margin-and-check-in, survey", "must-list",
         "radio-margin-and-check-in, which is not for"),
        (PLUNGER, "faults: [reads-short", "faults: [dead-after-knock, reads-short", "other-sense", "Plunger contact"),
        (PLUNGER, "  loop-open: {min: 1, unit: Mohm, status: typical}\n", "", "trait-data", "the value loop-open"),
    ],
)  # fmt: skip
def test_what_is_missing_is_said(
    file: str, old: str, new: str, code: str, said: str, library: Library, raw: tuple[RawRecord, ...]
) -> None:  # fmt: skip
    told = found(build_library(changed(raw, file, (old, new)), library.schemas), code)
    assert any(said in one for one in told), told
