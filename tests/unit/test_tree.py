"""Which files are records, and how a place in one is found."""

from __future__ import annotations

from pathlib import Path

import pytest

from latchside.findings import START, Place
from latchside.kinds import KINDS
from latchside.read.tree import RawRecord, read_project
from latchside.read.yaml_text import read_text

from .support import BASE, lay


def test_reads_every_record_once_in_a_fixed_order(tmp_path: Path) -> None:
    files = [raw.file for raw in read_project(lay(tmp_path)).records]
    assert sorted(files) == sorted(path.relative_to(BASE).as_posix() for path in BASE.rglob("*.yaml"))
    assert files == [raw.file for raw in read_project(tmp_path).records]
    folders = [Path(file).parent.as_posix() for file in files]
    assert list(dict.fromkeys(folders)) == [kind.folder for kind in KINDS.values()]


def test_kind_comes_from_the_folder() -> None:
    kinds = {raw.file: raw.kind.id for raw in read_project(BASE).records}
    assert kinds["checklists/fit-list.yaml"] == "checklist"
    assert kinds["checklists/procedures/fit-contact.yaml"] == "procedure"
    assert kinds["shared/terms/leaf.yaml"] == "term"


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.id)
def test_base_has_a_record_of_each_kind(kind: object) -> None:
    assert kind in {raw.kind for raw in read_project(BASE).records}


def test_nearest_place() -> None:
    raw = RawRecord(KINDS["term"], "f.yaml", "f", read_text("a:\n  b: [1]\n", "f.yaml"))
    assert raw.place("a", "b", 0) == Place(2, 7)
    assert raw.place("a", "b", 5, "x") == Place(2, 6)  # the list around it
    assert raw.place("gone") == Place(1, 1)
    assert raw.key_place("a", "b") == Place(2, 3)
    assert raw.key_place("a", "b", 0) == Place(2, 7)  # an entry of a list has no key
    assert raw.key_place("a", "gone") == Place(2, 3)  # the mapping it would stand in
    assert RawRecord(KINDS["term"], "f.yaml", "f", read_text("", "f.yaml")).place("a") == START


def test_records_in_a_folder_of_their_own_are_not_passed_over_in_silence(tmp_path: Path) -> None:
    lay(tmp_path)
    below = tmp_path / "shared" / "terms" / "doors" / "old"
    below.mkdir(parents=True)
    (below / "gate.yaml").write_text("id: gate\n", "utf-8")
    (below / "notes.txt").write_text("no record", "utf-8")
    reading = read_project(tmp_path)
    (found,) = reading.findings
    assert (found.file, found.code, found.level) == ("shared/terms/doors/old/gate.yaml", "in-a-subfolder", "error")
    assert "shared/terms" in found.action
    assert not [raw for raw in reading.records if raw.file == found.file]
