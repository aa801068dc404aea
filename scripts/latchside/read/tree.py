"""The record files and drawings of a project: which there are, and what can be read of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from latchside.findings import START, Finding, Place, place_after
from latchside.kinds import DRAWINGS, KINDS, Kind
from latchside.read.svg import Picture, read_svg
from latchside.read.yaml_text import Document, read_text

ENDINGS = (".yaml", ".yml", ".json")
LARGEST = 1_000_000  # bytes; a record is a page of text, not a database


@dataclass(frozen=True)
class RawRecord:
    """A record as read: nothing is known yet of whether it fits its schema."""

    kind: Kind
    file: str
    stem: str
    document: Document

    @property
    def value(self) -> Any:
        """The plain value of the file."""
        return self.document.value

    def place(self, *path: str | int) -> Place:
        """The place of the value at `path`, or of the nearest value around it."""
        for end in range(len(path), -1, -1):
            found = self.document.places.get(path[:end])
            if found:
                return found
        return START

    def key_place(self, *path: str | int) -> Place:
        """The place of the key at `path`, or of the value there."""
        return self.document.keys.get(path) or self.place(*path)


@dataclass(frozen=True)
class Reading:
    """All that was read: the records, the drawings, and the findings on the way."""

    records: tuple[RawRecord, ...]
    findings: tuple[Finding, ...]
    drawings: tuple[Picture, ...] = ()


def read_project(root: Path) -> Reading:
    """Read every record file and every drawing under `root`, in a fixed order."""
    records: list[RawRecord] = []
    drawings: list[Picture] = []
    findings: list[Finding] = []
    for kind in KINDS.values():
        for stem, file, text in _files(root, root / kind.folder, ENDINGS, findings):
            document = read_text(text, file)
            findings.extend(document.findings)
            records.append(RawRecord(kind, file, stem, document))
    for stem, file, text in _files(root, root / DRAWINGS, (".svg",), findings):
        read = read_svg(text, file)
        if isinstance(read, Finding):
            findings.append(read)
        else:
            drawings.append(Picture(file, stem, read))
    return Reading(tuple(records), tuple(findings), tuple(drawings))


def _files(
    root: Path, folder: Path, endings: tuple[str, ...], findings: list[Finding]
) -> Iterator[tuple[str, str, str]]:
    """Stem, name and text of each file of a folder that can be read; of the others, a finding."""
    findings.extend(_below(root, folder, endings))
    for path in sorted(folder.iterdir()) if folder.is_dir() else ():
        if path.suffix.lower() not in endings:
            continue
        file = path.relative_to(root).as_posix()
        text = _text(root, path, file, endings[0])
        if isinstance(text, Finding):
            findings.append(text)
        else:
            yield path.stem, file, text


def _below(root: Path, folder: Path, endings: tuple[str, ...]) -> Iterator[Finding]:
    """A finding for each file in a folder of its own below those of the kinds, where nothing is read."""
    kinds = [root / kind.folder for kind in KINDS.values()]
    for path in sorted(folder.iterdir()) if folder.is_dir() else ():
        if not path.is_dir() or path.is_symlink() or path in kinds:
            continue
        for one in sorted(path.rglob("*")):
            if one.suffix.lower() in endings and one.is_file():
                above = folder.relative_to(root).as_posix()
                what = "record" if endings == ENDINGS else "drawing"
                found, expected = f"a {what} in a folder of its own", f"every {what} in {above} itself"
                file = one.relative_to(root).as_posix()
                yield Finding(file, START, "in-a-subfolder", found, expected, f"Move the file up to {above}.")


def _text(root: Path, path: Path, file: str, ending: str) -> str | Finding:
    def refuse(code: str, found: str, expected: str, action: str, place: Place = START) -> Finding:
        return Finding(file, place, code, found, expected, action)

    if path.is_symlink() or not path.resolve().is_relative_to(root.resolve()):
        return refuse("symlink", "a link to another place", "a plain file", "Copy the file here instead.")
    if path.suffix != ending:
        return refuse("file-ending", path.name, f"a name that ends in {ending}", "Rename the file.")
    if not path.is_file():
        return refuse("not-a-file", "something that is not a file", "a plain file", "Remove or rename it.")
    size = path.stat().st_size
    if size > LARGEST:
        return refuse(
            "file-too-large",
            f"{size:,} bytes",
            f"at most {LARGEST:,} bytes",
            "Split it into several records." if ending in ENDINGS else "Draw it with fewer points.",
        )
    try:
        data = path.read_bytes()
    except OSError as error:
        return refuse(
            "cannot-read",
            error.strerror or "no way to read it",
            "a file that may be read",
            "Fix the file's permissions.",
        )
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8-sig")
        place = place_after(before)
        return refuse("not-utf-8", f"byte 0x{data[error.start]:02x}", "text in UTF-8", "Save the file as UTF-8.", place)
