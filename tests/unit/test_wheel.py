"""The wheel carries all that a command needs: installed into a folder, it checks, plans and writes with no checkout."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from latchside.root import PARTS, ROOT

from .support import RECORDS, lay

pytestmark = pytest.mark.slow

SOURCES = (*PARTS, "scripts/latchside", "setup.py", "pyproject.toml", "README.md")
TERM = """\
id: house-word
name: House word
summary: A word of this firm.
version: 1
review: {by: not yet, on: not yet, trial: not yet}
basis: [{status: common practice}]
meaning: What this firm says.
north_america: [house word]
europe: [house word]
"""


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built from a copy of the checkout without a network and unpacked."""
    folder = tmp_path_factory.mktemp("wheel")
    for name in SOURCES:
        source, target = ROOT / name, folder / "checkout" / name
        target.parent.mkdir(parents=True, exist_ok=True)
        if source.is_dir():
            shutil.copytree(source, target, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy(source, target)
    command = ["install", "--quiet", "--no-index", "--no-deps", "--no-build-isolation", "--no-compile", "--target"]
    pip = [sys.executable, "-m", "pip", "--disable-pip-version-check"]
    done = subprocess.run(
        [*pip, *command, str(folder / "target"), str(folder / "checkout")], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return folder / "target"


def latchside(installed: Path, at: Path, *arguments: str | Path) -> subprocess.CompletedProcess[str]:
    """The command of the installed package, run where there is no checkout."""
    command = [sys.executable, "-m", "latchside.cli", *map(str, arguments)]
    environment = {**os.environ, "PYTHONPATH": str(installed)}
    return subprocess.run(command, cwd=at, env=environment, capture_output=True, text=True, check=False)


def test_its_own_project_is_checked_and_plans(installed: Path, tmp_path: Path) -> None:
    checked = latchside(installed, tmp_path, "check")
    assert checked.stdout == f"{len(list(_records(ROOT)))} records, nothing found.\n", checked.stdout + checked.stderr
    survey = RECORDS.parent / "jobs" / "tea-room.yaml"
    planned = latchside(installed, tmp_path, "plan", survey, "--out", "pack")
    assert "The pack is in pack" in planned.stdout, planned.stdout + planned.stderr
    assert (tmp_path / "pack" / "index.html").is_file()


def test_a_project_of_ones_own_is_the_one_that_is_checked(installed: Path, tmp_path: Path) -> None:
    small = lay(tmp_path / "small")
    (small / "shared" / "terms" / "house-word.yaml").write_text(TERM, "utf-8")
    checked = latchside(installed, tmp_path, "check", "--root", small)
    assert checked.stdout == f"{len(list(_records(small)))} records, nothing found.\n", checked.stdout + checked.stderr


def test_the_project_inside_the_package_is_not_written_to(installed: Path, tmp_path: Path) -> None:
    refused = latchside(installed, tmp_path, "new", "term", "house-word")
    assert refused.returncode == 1
    assert "latchside new project FOLDER" in refused.stderr
    assert not (installed / "latchside" / "base" / "shared" / "terms" / "house-word.yaml").exists()


def test_a_new_project_is_whole_and_the_one_that_is_stood_in(installed: Path, tmp_path: Path) -> None:
    assert latchside(installed, tmp_path, "new", "project", "firm").returncode == 0
    assert latchside(installed, tmp_path / "firm", "new", "term", "house-word").returncode == 0
    assert (tmp_path / "firm" / "shared" / "terms" / "house-word.yaml").is_file()
    again = latchside(installed, tmp_path, "new", "project", "firm")
    assert "is not empty; nothing was written" in again.stderr
    assert all((tmp_path / "firm" / name).exists() for name in PARTS)


def _records(root: Path) -> list[Path]:
    folders = ("content", "checklists", "shared")
    return [path for folder in folders for path in (root / folder).rglob("*.yaml")]
