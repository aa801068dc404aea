"""A class that is not shipped, a floor-spring plunger, is added as the guide for maintainers says, word by word.

It is begun as a copy of the plunger contact of `tests/classes/`, with the starters that its head names. One check lists
every blank; each is filled in; the next check finds nothing.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from latchside.cli import main
from latchside.findings import Finding
from latchside.project import check_project

from .test_new_classes import copy

DEVICE = "content/devices/floor-spring-plunger.yaml"
POSITION, FIX = (f"checklists/procedures/{id_}-floor-spring-plunger.yaml" for id_ in ("position", "fix"))
LIST = "checklists/floor-spring-check.yaml"
DRAWING = "content/drawings/floor-spring-section.svg"
TIMES = "shared/tables/work-times.yaml"
HEADER = 6
"""So many lines of the copy say what to do, in order."""

FILLED: dict[str, list[tuple[str, str]]] = {
    DEVICE: [
        ("name: FILL IN", "name: Floor-spring plunger"),
        ("also_called: [FILL IN]", "also_called: [floor spring contact]"),
        ("summary: FILL IN", "summary: A wired switch at the floor spring, whose plunger the closed door presses in."),
        ("works:\n  - FILL IN", "works:\n  - The arm of the floor spring presses the plunger in."),
        ("text: FILL IN", "text: A heavy door on a floor spring, with a cable in the floor."),
        ("text: FILL IN", "text: A door that does not close home."),
        ("text: FILL IN", "text: A fire-rated door."),
        ("text: FILL IN", "text: An escape door."),
        ("text: FILL IN", "text: A floor that may not be drilled."),
        ("openings: [FILL IN]", "openings: [hinged-door]"),
        ("{on: [FILL IN], text: FILL IN}", "{on: [hinged-door], text: In the box of the floor spring beside the arm.}"),
        ("hole-diameter: FILL IN", "hole-diameter: {value: 16, unit: mm, status: typical}"),
        ("hole-depth: FILL IN", "hole-depth: {value: 30, unit: mm, status: typical}"),
        ("contact-resistance: FILL IN", "contact-resistance: {max: 10, unit: ohm, status: typical}"),
        ("end-of-line: FILL IN", "end-of-line: {value: 2200, unit: ohm, tolerance: {percent: 5}, status: typical}"),
        ("loop-shut: FILL IN", "loop-shut: {value: 2208, unit: ohm, tolerance: {percent: 6}, status: typical}"),
        ("loop-open: FILL IN", "loop-open: {min: 1, unit: Mohm, status: typical}"),
        ("loop-short: FILL IN", "loop-short: {max: 10, unit: ohm, status: typical}"),
        ("cable-area: FILL IN", "cable-area: {value: 0.22, unit: mm2, status: typical}"),
        ("cable-length: FILL IN", "cable-length: {max: 50, unit: m, status: typical}"),
        ("choose_when: FILL IN, if_wrong: FILL IN", "choose_when: Always., if_wrong: The zone shows open."),
        ("power:\n  - FILL IN", "power:\n  - None. The receiving equipment puts a small voltage across the loop."),
        ("tamper:\n  - FILL IN", "tamper:\n  - A short on the cable shows where a resistor is wired at the contact."),
        ("power: {none: FILL IN}", "power: {none: A switch takes no power of its own.}"),
        ("try: {none: FILL IN}", "try: {none: The plunger is tried by hand while it is positioned.}"),
        ("fix: {none: FILL IN}", "fix: {none: The contact is fixed while its loop is wired.}"),
        ("maintenance:\n  - FILL IN", "maintenance:\n  - The plunger is pressed in and let out ten times."),
        ("disposal:\n  - FILL IN", 'disposal:\n  - "The cable is made safe: [[procedure/remove-device]]."'),
    ],
    LIST: [
        ("name: FILL IN", "name: Floor spring"),
        ("summary: FILL IN", "summary: What has to be true before the box of a floor spring is closed."),
        ("stage: FILL IN", "stage: fix"),
        ("starts: FILL IN", "starts: The box of the floor spring is open."),
        ("run_by: FILL IN", "run_by: The technician at the opening."),
        ("  - fill-in\n", "  - sprung-and-powered-doors\n"),
        ("id: fill-in\n", "id: box\n"),
        ("title: FILL IN", "title: In the box"),
        *(
            pair
            for number, (subject, state) in enumerate(
                (("Spring", "holds no oil outside"), ("Plunger", "meets the arm square"), ("Cable", "clear of the arm"),
                 ("Joints", "dry and off the floor of the box"), ("Lid", "lies flat")), 1,
            )
            for pair in (
                (f"id: fill-in-{number}\n", f"id: item-{number}\n"),
                ("critical: FILL IN", f"critical: {str(number == 1).lower()}"),
                ("subject: FILL IN", f"subject: {subject}"),
                ("state: FILL IN", f"state: {state}"), ("step: fill-in", "step: fix-floor-spring-plunger/push"),
            )
        ),
        ("complete: FILL IN", "complete: The box may be closed."),
    ],
    DRAWING: [
        ("<title>FILL IN", "<title>Floor spring"),
        ("<desc>FILL IN", "<desc>The plunger sits in the box of the floor spring, where the arm meets it."),
        (">FILL IN<", ">Seen from above<"),
        (">FILL IN<", ">plunger<"),
    ],
    TIMES: [("low: FILL IN, usual: FILL IN, high: FILL IN, waiting: 0, why: FILL IN",
             "low: 5, usual: 10, high: 20, waiting: 0, why: The floor")] * 2,
}  # fmt: skip
STEPS = {
    POSITION: (("mark", "Mark the place of the plunger in the box."), "The arm covers the mark."),
    FIX: (("push", "Push the switch home by hand."), "The flange lies flat."),
}
FILLED |= {
    file: [
        ("name: FILL IN", f"name: {file.split('/')[-1].split('-')[0].capitalize()} a floor-spring plunger"),
        ("summary: FILL IN", "summary: Brings the plunger to where the arm of the floor spring meets it."),
        ("before:\n  - FILL IN", "before:\n  - The opening is on test."),
        ("people: FILL IN", "people: One technician."),
        ("minutes: FILL IN", "minutes: 10"),
        ("safety:\n  - fill-in", "safety:\n  - sprung-and-powered-doors"),
        ("tools:\n  - fill-in", "tools:\n  - screwdriver"),
        ("parts:\n  - FILL IN", "parts: none"),
        ("id: fill-in", "id: place"),
        ("title: FILL IN", "title: At the box"),
        ("at: yard", "at: opening"),
        ("id: fill-in\n        do: FILL IN", f"id: {id_}\n        do: {do}"),
        ("result: FILL IN", f"result: {result}"),
        ("id: fill-in\n    do: FILL IN", "id: look\n    do: Look at the arm beside the plunger."),
        ("result: FILL IN", "result: The arm is sound."),
        ("id: fill-in\n    do: FILL IN", "id: write\n    do: Write the place on the sheet."),
        ("result: FILL IN", "result: The line of this opening names it."),
        ("when: FILL IN\n    do: FILL IN", "when: The plunger does not come out.\n    do: Move it away from the arm."),
    ]
    for file, ((id_, do), result) in STEPS.items()
}  # fmt: skip


def run(root: Path, *words: str) -> None:
    result = CliRunner().invoke(main, [*words, "--root", str(root)])
    assert result.exit_code == 0, result.output


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The project with the copy, and with all that its head and the guide name."""
    made = copy(tmp_path_factory.mktemp("guide"))
    run(made, "new", "device", "floor-spring-plunger", "--like", "plunger-contact")
    head = (made / DEVICE).read_text("utf-8").splitlines()[:HEADER]
    for line in head:
        if command := re.search(r"latchside (new .*)$", line):
            run(made, *command[1].split())
    run(made, "new", "drawing", "floor-spring-section", "--for", "floor-spring-plunger")
    run(made, "new", "checklist", "floor-spring-check", "--for", "floor-spring-plunger")
    return made


@pytest.fixture(scope="module")
def before(root: Path) -> dict[str, str]:
    """The files with blanks as they were begun."""
    return {file: (root / file).read_text("utf-8") for file in FILLED}


@pytest.fixture(scope="module")
def first(root: Path, before: dict[str, str]) -> tuple[Finding, ...]:
    return check_project(root).findings


@pytest.fixture(scope="module")
def filled(root: Path, first: tuple[Finding, ...]) -> Path:
    """The project with each blank filled in, from top to bottom."""
    for file, pairs in FILLED.items():
        text = (root / file).read_text("utf-8")
        for old, new in pairs:
            assert old in text, f"{file}: {old}"
            text = text.replace(old, new, 1)
        (root / file).write_text(text, "utf-8")
    return root


def test_the_copy_keeps_what_it_is_and_tells_what_was(before: dict[str, str]) -> None:
    text = before[DEVICE]
    assert "traits: {senses: plunger, reports: loop, mounts: drilled}" in text
    assert "name: FILL IN  # was: Plunger contact" in text
    assert "hole-depth: FILL IN  # was: {value: 40, unit: mm, status: typical}" in text
    assert "wire: [run-cable, join-and-terminate, meter-loop, fix-floor-spring-plunger, land-on-terminals]" in text
    assert "drawings: [loop-series, floor-spring-section]" in text
    assert re.search(r"removal, floor-spring-check\]", text)
    assert "stage: position\n" in before[POSITION]


def test_one_check_lists_every_blank_of_every_file_and_nothing_else(
    first: tuple[Finding, ...], before: dict[str, str]
) -> None:
    assert {one.code for one in first} == {"blank-left"}
    listed = {(one.file, one.place.line) for one in first}
    marked = {
        (file, number)
        for file, text in before.items()
        for number, line in enumerate(text.splitlines(), 1)
        if re.search(r"FILL IN|fill-in", line.partition("#")[0] if not file.endswith("svg") else line)
    }
    assert listed == marked


def test_filled_in_the_check_finds_nothing(filled: Path) -> None:
    found = check_project(filled).findings
    assert [f"{one.file}:{one.place.line} {one.code}: {one.found}" for one in found] == []
