"""One run over a project: read, fit to schemas, link, apply the rules."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path

from latchside.blanks import blanks
from latchside.collector import without_collector
from latchside.findings import Finding
from latchside.kinds import DRAWINGS, KINDS
from latchside.library import Library, build_library
from latchside.read.tree import RawRecord, read_project
from latchside.read.yaml_text import Document, read_text
from latchside.root import ROOT, schema_folder
from latchside.rules import all_rules
from latchside.rules.blank_left import CODE as BLANK_LEFT
from latchside.schemas import Schemas, load_schemas
from latchside.schemas.validate import misfits
from latchside.version import library_version

Progress = Callable[[str], None]


@dataclass(frozen=True)
class Checked:
    """The library of all sound records, and everything the check has to say."""

    library: Library
    findings: tuple[Finding, ...]

    @property
    def errors(self) -> int:
        """How many findings are errors."""
        return sum(finding.level == "error" for finding in self.findings)


@without_collector()
def check_project(
    root: Path = ROOT,
    *,
    schemas: Schemas | None = None,
    progress: Progress = lambda _: None,
    read: Callable[[str, str], Document] = read_text,
) -> Checked:
    """Check every record under `root`; bad records become findings, sound ones the library."""
    fitting = read_library(root, schemas=schemas, progress=progress, read=read)
    progress("applying rules")
    found = [finding for rule in all_rules() for finding in rule.check(fitting.library)]
    return Checked(fitting.library, tuple(sorted(_told([*fitting.findings, *found]))))


def read_library(
    root: Path = ROOT,
    *,
    schemas: Schemas | None = None,
    progress: Progress = lambda _: None,
    read: Callable[[str, str], Document] = read_text,
) -> Checked:
    """As `check_project`, without the rules: only what can be said of each record by itself."""
    progress("reading records")
    schemas = schemas or load_schemas(schema_folder(root))
    reading = read_project(root, read)
    findings = list(reading.findings)
    sound: list[RawRecord] = []
    broken: list[RawRecord] = []
    progress("checking against schemas")
    for raw in reading.records:
        unfit = () if raw.value is None else tuple(misfits(raw, schemas))
        blank = [path for path, _ in blanks(raw.value)] if unfit else []
        findings.extend(finding for path, finding in unfit if path not in blank)
        if unfit or raw.document.findings:
            broken.append(raw)
        else:
            sound.append(raw)
    unread = _refused(reading.findings, {raw.file for raw in reading.records} | {one.file for one in reading.drawings})
    library = build_library(sound, schemas, broken, unread, reading.drawings, reading.on_pages, root)
    return Checked(library, tuple(sorted(set(findings))))


def _told(findings: Iterable[Finding]) -> set[Finding]:
    """Each finding once. Of a blank nothing else is said: what is wrong with it goes when it is filled in."""
    known = set(findings)
    blank = {(one.file, one.place) for one in known if one.code == BLANK_LEFT}
    return {one for one in known if one.code == BLANK_LEFT or (one.file, one.place) not in blank}


def fingerprint(root: Path) -> str:
    """A hash of all that a plan is made from: the files of a project, its schemas, the version of this package."""
    folders = (schema_folder(root), *(root / name for name in ("content", "checklists", "shared")))
    total = hashlib.sha256(library_version().encode("utf-8"))
    for folder in folders:
        for path in sorted(path for path in folder.rglob("*") if path.is_file()):
            total.update(f"{path.relative_to(folder)} ".encode())
            total.update(hashlib.sha256(path.read_bytes()).digest())
    return total.hexdigest()


def _refused(findings: tuple[Finding, ...], read: set[str]) -> list[tuple[str, str]]:
    """Kind and id of files that are there but could not be read, so that nobody calls them missing."""
    kinds = {kind.folder: kind.id for kind in KINDS.values()} | {DRAWINGS: "drawing"}
    refused = []
    for finding in findings:
        folder, _, name = finding.file.rpartition("/")
        if finding.file not in read and folder in kinds:
            refused.append((kinds[folder], name.rpartition(".")[0]))
    return refused
