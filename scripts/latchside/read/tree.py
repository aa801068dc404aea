"""The record files and drawings of a project: which there are, and what can be read of them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from latchside.findings import START, Finding, Place, place_after
from latchside.kinds import DRAWINGS, KINDS, Kind
from latchside.messages import messages
from latchside.read.svg import Picture, read_svg
from latchside.read.yaml_text import Document, read_text

message = messages(__name__)
ENDINGS = (".yaml", ".yml", ".json")
LARGEST = 1_000_000  # bytes; a record is a page of text, not a database
PAGES = "content"
"""The folder of the hand-written pages."""
_DRAWING_OF_A_PAGE = re.compile(r"""\bdrawing\(\s*["']([^"']+)["']""")


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
    """All that was read, the findings on the way, and the ids of the drawings that hand-written pages show."""

    records: tuple[RawRecord, ...]
    findings: tuple[Finding, ...]
    drawings: tuple[Picture, ...] = ()
    on_pages: frozenset[str] = frozenset()


def read_project(root: Path, read: Callable[[str, str], Document] = read_text) -> Reading:
    """Read every record file and every drawing under `root`, in a fixed order; `read` may remember what it read."""
    records: list[RawRecord] = []
    drawings: list[Picture] = []
    findings: list[Finding] = []
    for kind in KINDS.values():
        for stem, file, text in _files(root, root / kind.folder, ENDINGS, findings):
            document = read(text, file)
            findings.extend(document.findings)
            records.append(RawRecord(kind, file, stem, document))
    for stem, file, text in _files(root, root / DRAWINGS, (".svg",), findings):
        picture = read_svg(text, file)
        if isinstance(picture, Finding):
            findings.append(picture)
        else:
            drawings.append(Picture(file, stem, picture))
    return Reading(tuple(records), tuple(findings), tuple(drawings), frozenset(_on_pages(root / PAGES)))


def _on_pages(folder: Path) -> Iterator[str]:
    """The ids of the drawings that hand-written pages show."""
    for path in sorted(folder.rglob("*.md")):
        if path.is_file() and not path.is_symlink():
            yield from _DRAWING_OF_A_PAGE.findall(path.read_bytes()[:LARGEST].decode("utf-8", "replace"))


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
                sort = "record-in-a-subfolder" if endings == ENDINGS else "drawing-in-a-subfolder"
                file = one.relative_to(root).as_posix()
                yield Finding(file, START, "in-a-subfolder", *message.finding(sort, folder=above))


def _text(root: Path, path: Path, file: str, ending: str) -> str | Finding:
    """The text of a file, or why it is not read. `ending` is that of the files that are read here."""
    if path.is_symlink() or not path.resolve().is_relative_to(root.resolve()):
        return Finding(file, START, "symlink", *message.finding("symlink"))
    if path.suffix != ending:
        return Finding(file, START, "file-ending", *message.finding("file-ending", name=path.name, ending=ending))
    if not path.is_file():
        return Finding(file, START, "not-a-file", *message.finding("not-a-file"))
    size = path.stat().st_size
    if size > LARGEST:
        sort = "record-too-large" if ending in ENDINGS else "drawing-too-large"
        return Finding(file, START, "file-too-large", *message.finding(sort, size=size, most=LARGEST))
    try:
        data = path.read_bytes()
    except OSError as error:
        why = error.strerror or message("unreadable")
        return Finding(file, START, "cannot-read", *message.finding("cannot-read", why=why))
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        place = place_after(data[: error.start].decode("utf-8-sig"))
        return Finding(file, place, "not-utf-8", *message.finding("not-utf-8", byte=f"0x{data[error.start]:02x}"))
