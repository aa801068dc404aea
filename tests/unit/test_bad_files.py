"""Whatever stands in a file, it becomes one clear finding, and every other record is still checked."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from latchside.findings import Place
from latchside.kinds import DRAWINGS, KINDS
from latchside.read.tree import LARGEST

from .support import BASE, RECORDS, Expected, check, lay, lines

CASES = sorted(path for path in (RECORDS / "bad-files").iterdir() if path.is_dir())
WITNESS = RECORDS / "bad" / "harmless-notice" / "injury"
"""A known finding in a record that no bad file touches: it shows that the others were still checked."""
FOLDERS = {kind.folder: kind.id for kind in KINDS.values()} | {DRAWINGS: "drawing"}


def key(path: Path, root: Path) -> tuple[str, str]:
    relative = path.relative_to(root)
    return FOLDERS[relative.parent.as_posix()], path.stem


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_one_finding_and_the_rest_is_checked(case: Path, tmp_path: Path) -> None:
    checked = check(lay(tmp_path, WITNESS, case))
    witness = Expected(WITNESS).lines
    assert witness <= lines(checked.findings)
    Expected(case).compare(one for one in checked.findings if lines([one]) != witness)
    touched = {key(path, case) for path in case.rglob("*.*") if path.suffix != ".txt"}
    untouched = {key(path, BASE) for path in BASE.rglob("*.yaml")} - touched
    assert untouched <= {record.key for record in checked.library}


def test_over_a_megabyte(tmp_path: Path) -> None:
    lay(tmp_path)
    file = tmp_path / "shared/terms/gap.yaml"
    file.write_bytes(b"#" * (LARGEST + 1))
    assert lines(check(tmp_path).findings) == {"shared/terms/gap.yaml:1:1 file-too-large"}
    file.write_bytes(b"id: gap\n".ljust(LARGEST, b"#"))  # the largest that is read: its own faults are found
    assert {one.code for one in check(tmp_path).findings} == {"missing-key"}


@pytest.mark.parametrize("there", [True, False], ids=["to-a-file", "to-nothing"])
def test_symlink(there: bool, tmp_path: Path) -> None:
    root = lay(tmp_path / "project")
    outside = tmp_path / "outside.yaml"
    if there:
        outside.write_text("id: gap\n", "utf-8")
    (root / "shared/terms/gap.yaml").symlink_to(outside)
    assert lines(check(root).findings) == {"shared/terms/gap.yaml:1:1 symlink"}


def test_symlinked_folder(tmp_path: Path) -> None:
    """A folder that leads out of the project is not read either."""
    root = lay(tmp_path / "project")
    tools = root / "shared/tools"
    tools.rename(tmp_path / "tools")
    tools.symlink_to(tmp_path / "tools", target_is_directory=True)
    checked = check(root)
    assert lines(checked.findings) == {"shared/tools/drill.yaml:1:1 symlink", "shared/tools/feeler.yaml:1:1 symlink"}
    assert not checked.library.of("tool")


def test_link_to_itself(tmp_path: Path) -> None:
    root = lay(tmp_path)
    (root / "shared/terms/gap.yaml").symlink_to("gap.yaml")
    assert lines(check(root).findings) == {"shared/terms/gap.yaml:1:1 symlink"}


def test_folder_named_like_a_record(tmp_path: Path) -> None:
    root = lay(tmp_path)
    (root / "shared/terms/gap.yaml").mkdir()
    assert lines(check(root).findings) == {"shared/terms/gap.yaml:1:1 not-a-file"}


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_pipe_named_like_a_record(tmp_path: Path) -> None:
    """A pipe nobody writes to would hold the check for ever."""
    root = lay(tmp_path)
    os.mkfifo(root / "shared/terms/gap.yaml")
    assert lines(check(root).findings) == {"shared/terms/gap.yaml:1:1 not-a-file"}


def test_file_that_may_not_be_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Permissions mean nothing to the superuser, so the refusal is played."""
    root = lay(tmp_path)
    target = root / "shared/terms/gap.yaml"
    target.write_text("id: gap\n", "utf-8")
    read = Path.read_bytes

    def refuse(path: Path) -> bytes:
        if path == target:
            raise PermissionError(13, "Permission denied", str(path))
        return read(path)

    monkeypatch.setattr(Path, "read_bytes", refuse)
    found = check(root).findings
    assert [(one.file, one.place) for one in found] == [("shared/terms/gap.yaml", Place(1, 1))]


def test_no_folders_at_all(tmp_path: Path) -> None:
    checked = check(tmp_path)
    assert checked.findings == ()
    assert not list(checked.library)


def test_other_files_are_let_be(tmp_path: Path) -> None:
    root = lay(tmp_path)
    for name in ("README.md", "gap.yaml.bak", "notes.txt", ".gitkeep"):
        (root / "shared/terms" / name).write_text("{", "utf-8")
    assert check(root).findings == ()


def test_same_findings_every_time(tmp_path: Path) -> None:
    root = lay(
        tmp_path, WITNESS, *(RECORDS / "bad-files" / name for name in ("anchor", "wrong-type", "circle-of-draws"))
    )
    first = check(root).findings
    assert first == check(root).findings
    assert list(first) == sorted(first)
