"""What the unit tests share: the made-up base project, and small changes laid over it."""

from __future__ import annotations

import shutil
import subprocess
import sys
from collections.abc import Iterable
from functools import cache, lru_cache
from pathlib import Path

from latchside.findings import Finding
from latchside.library import Library, build_library
from latchside.project import Checked, check_project
from latchside.read.tree import RawRecord, read_project
from latchside.read.yaml_text import Document, read_text
from latchside.root import ROOT
from latchside.schemas import Schemas, load_schemas

RECORDS = Path(__file__).parents[1] / "records"
BASE = RECORDS / "good" / "base"
"""A small project with a record of each kind, in which nothing is found."""


@cache
def schemas() -> Schemas:
    """The project's schemas, read once."""
    return load_schemas(ROOT / "schema")


def lay(target: Path, *overlays: Path) -> Path:
    """The base project in `target`, with the files of each overlay laid over it."""
    for folder in (BASE, *overlays):
        shutil.copytree(folder, target, dirs_exist_ok=True, ignore=shutil.ignore_patterns("expected.txt"))
    return target


def change(root: Path, file: str, old: str, new: str) -> None:
    """Replace `old`, which stands once in `file`, by `new`."""
    path = root / file
    text = path.read_text("utf-8")
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {file}"
    path.write_text(text.replace(old, new), "utf-8")


def check(root: Path) -> Checked:
    """Check the project in `root` against the project's own schemas. A file is read once for all tests."""
    return check_project(root, schemas=schemas(), read=_read)


_read = lru_cache(maxsize=2000)(read_text)


def base_library(root: Path) -> Library:
    """The library in `root`, which has to be free of findings."""
    checked = check(root)
    assert not checked.findings, checked.findings
    return checked.library


def many_alike(id_: str, count: int) -> Library:
    """The shipped library with so many copies of a device, under ids and names of their own."""
    reading = read_project(ROOT)
    raw = list(reading.records)
    (pattern,) = (one for one in raw if one.kind.id == "device" and one.stem == id_)
    for number in range(count):
        copied = {**pattern.value, "id": f"{id_}-{number}", "name": f"{pattern.value['name']} {number}"}
        raw.append(RawRecord(pattern.kind, pattern.file, copied["id"], Document(value=copied)))
    return build_library(raw, schemas(), drawings=reading.drawings)


def lines(findings: Iterable[Finding]) -> set[str]:
    """The findings as `expected.txt` writes them: `file:line:column code`."""
    return {f"{one.file}:{one.place.line}:{one.place.column} {one.code}" for one in findings}


class Expected:
    """What `expected.txt` of an overlay says: the findings, whether others may be there, and words they hold."""

    def __init__(self, folder: Path) -> None:
        listed = (folder / "expected.txt").read_text("utf-8").splitlines()
        self.others = "also" in listed
        self.words = [line.removeprefix("says ") for line in listed if line.startswith("says ")]
        self.lines = {line for line in listed if line and line != "also" and not line.startswith("says ")}

    def compare(self, findings: Iterable[Finding]) -> None:
        """Fail where a finding is missing, not expected, or silent about what it should say."""
        found = list(findings)
        assert self.lines <= lines(found) if self.others else self.lines == lines(found), found
        said = "\n".join(f"{one.found} {one.expected} {one.action}" for one in found)
        for words in self.words:
            assert words in said


def cases(top: str) -> list[Path]:
    """The overlay folders under `tests/records/<top>/<code>/`, without the base project."""
    return sorted(folder for folder in (RECORDS / top).glob("*/*") if folder.is_dir() and folder.parent != BASE)


def case_id(folder: Path) -> str:
    """`code/case`, as the test run shows it."""
    return f"{folder.parent.name}/{folder.name}"


def runs_without(names: Iterable[str], code: str) -> None:
    """Run code in a fresh Python in which the modules of these names cannot be imported."""
    head = f"import sys\nfor name in {sorted(names)!r}:\n    sys.modules[name] = None\n"
    subprocess.run([sys.executable, "-c", head + code], check=True)
