"""Procedures as they are followed: shared steps drawn in, and only what is for the device at hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from latchside.library import Library, Record
from latchside.library.compiled import SECTIONS, for_device, groups, own_steps

from .support import base_library, change, check, lay, schemas

FIT = "checklists/procedures/fit-contact.yaml"
SHUT = "checklists/procedures/shut-leaf.yaml"


def procedure(library: Library, id_: str = "fit-contact") -> Record:
    found = library.find("procedure", id_)
    assert found
    return found


def titles(library: Library, device: str | None = None, id_: str = "fit-contact") -> list[tuple[str, str, list[str]]]:
    found = groups(library, procedure(library, id_), device)
    return [(group.owner.id, group.title, [step["id"] for step in group.steps]) for group in found]


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return lay(tmp_path)


def test_drawn_in_where_it_stands(root: Path) -> None:
    library = base_library(root)
    assert titles(library) == [
        ("fit-contact", "Holes", ["drill", "measure-gap", "tie"]),
        ("shut-leaf", "Shut", ["shut"]),
    ]
    change(root, FIT, "steps:\n", "steps:\n  - draw: shut-leaf\n")
    assert [title for _, title, _ in titles(base_library(root))] == ["Shut", "Holes", "Shut"]


def test_drawn_through_another(root: Path) -> None:
    text = (root / SHUT).read_text("utf-8")
    third = text.replace("id: shut-leaf", "id: third").replace("title: Shut", "title: Third")
    (root / "checklists/procedures/third.yaml").write_text(third, "utf-8")
    change(root, SHUT, "steps:\n", "steps:\n  - draw: third\n")
    assert [(owner, title) for owner, title, _ in titles(base_library(root))] == [
        ("fit-contact", "Holes"), ("third", "Third"), ("shut-leaf", "Shut"),
    ]  # fmt: skip


def test_only_groups_of_steps_are_drawn(root: Path) -> None:
    """What a drawn procedure does to prove and to close up stays its own."""
    drawn = [step for _, _, steps in titles(base_library(root)) for step in steps]
    assert "note" not in drawn


def test_steps_for_another_device_are_left_out(root: Path) -> None:
    library = base_library(root)
    assert titles(library, "pane-contact") == titles(library)
    assert titles(library, "another")[0] == ("fit-contact", "Holes", ["drill", "measure-gap"])


def test_groups_for_another_device_are_left_out(root: Path) -> None:
    change(root, FIT, "    at: opening\n", "    at: opening\n    only: [pane-contact]\n")
    library = base_library(root)
    assert [title for _, title, _ in titles(library, "pane-contact")] == ["Holes", "Shut"]
    assert [title for _, title, _ in titles(library, "another")] == ["Shut"]
    assert [title for _, title, _ in titles(library)] == ["Holes", "Shut"]  # no device at hand: everything


def test_a_group_left_without_steps_goes(root: Path) -> None:
    change(root, SHUT, "result: The latch is in its keep.}", "result: The latch is in its keep., only: [pane-contact]}")
    assert [title for _, title, _ in titles(base_library(root), "another")] == ["Holes"]


def test_only_holds_for_drawn_steps_too(root: Path) -> None:
    change(root, SHUT, "    at: opening\n", "    at: opening\n    only: [pane-contact]\n")
    assert [title for _, title, _ in titles(base_library(root), "another")] == ["Holes"]


@pytest.mark.parametrize("drawn", ["fit-contact", "shut-leaf"], ids=["by-way-of-another", "itself"])
def test_a_circle_ends(drawn: str, root: Path) -> None:
    """It is a finding of its own; a page of a circle is never asked to go round for ever."""
    change(root, SHUT, "steps:\n", f"steps:\n  - draw: {drawn}\n")
    library = check(root).library
    assert [title for _, title, _ in titles(library, id_="shut-leaf")][-1] == "Shut"


def test_own_steps_in_the_order_they_are_done(root: Path) -> None:
    found = list(own_steps(procedure(base_library(root))))
    assert [(path, step["id"]) for path, step in found] == [
        (("steps", 0, "do", 0), "drill"),
        (("steps", 0, "do", 1), "measure-gap"),
        (("steps", 0, "do", 2), "tie"),
        (("prove", 0), "see"),
    ]


def test_for_device_keeps_the_order() -> None:
    steps = ({"id": "a"}, {"id": "b", "only": ("x",)}, {"id": "c", "only": ("y", "x")})
    assert [step["id"] for step in for_device(steps, "x")] == ["a", "b", "c"]
    assert [step["id"] for step in for_device(steps, "y")] == ["a", "c"]
    assert [step["id"] for step in for_device(steps, None)] == ["a", "b", "c"]


def test_sections_are_keys_of_the_schema() -> None:
    assert set(SECTIONS) <= set(schemas().documents["procedure.schema.json"]["required"])
