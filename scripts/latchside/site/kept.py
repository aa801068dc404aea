"""What a build made, kept for the next one: by what it was made from, and by all that was read on the way.

One file holds it, `.cache/site.sqlite`. It may be deleted at any time; what is made afresh has the same bytes.
`general` is a hash of what everything depends on: this package and what it calls, the schemas, the drawings, which
records there are. Where the file cannot be read or written, nothing is kept, and the build takes its time.
"""

from __future__ import annotations

import json
import sqlite3
import sys
from collections.abc import Iterable, Iterator, Mapping
from contextlib import closing, contextmanager, suppress
from dataclasses import dataclass, field
from functools import partial
from hashlib import sha256
from pathlib import Path

import jinja2

from latchside.all_cores import all_cores
from latchside.figures.units import registry
from latchside.kinds import DRAWINGS
from latchside.library.state import State
from latchside.packs.document import STYLES
from latchside.pages.render import Parts, Task
from latchside.reads import Read, noted
from latchside.root import cache_folder, schema_folder
from latchside.root import part as part_of_project
from latchside.version import library_version

NAME = "site.sqlite"
_COLUMNS = "name, key, reads, state, value, digest"
_FIND = f"SELECT {_COLUMNS} FROM made WHERE name = ? AND key = ?"
_TABLE = "CREATE TABLE made (name TEXT PRIMARY KEY, key TEXT, reads TEXT, state TEXT, value BLOB, digest TEXT)"
_PACKAGE = Path(__file__).parents[1]
_BESIDE = ("mkdocs.yml", "shared/differences.json", *(f"content/assets/{name}" for name in STYLES))
"""What else pages are made from, beside the records, this package, the drawings, the schemas and the written pages."""


def kept_at(root: Path) -> Path | None:
    """Where the builds of a project keep what they made; nowhere for the one inside an installed package."""
    folder = cache_folder(root)
    return folder / NAME if folder else None


@dataclass
class Kept:
    """What was kept for a library at `file`; with no file, nothing.

    A row holds what a value was made from (`key`), what was read on the way and how that stood, and a digest of all
    this: what a failing disk has changed is no longer what was kept.
    """

    file: Path | None
    general: str
    state: State
    _used: set[str] = field(default_factory=set)
    _fresh: list[_Row] = field(default_factory=list)

    def find(self, wanted: Mapping[str, str]) -> dict[str, bytes]:
        """Of names with what each is made from, those whose kept value still holds, with that value."""
        self._used.update(wanted)
        found: dict[str, bytes] = {}
        with suppress(sqlite3.Error), self._open() as opened:
            for name, made_from in wanted.items():
                asked = name, self._key(made_from)
                row = opened and opened.execute(_FIND, asked).fetchone()
                if row and self._holds(row):
                    found[name] = row[4]
        return found

    def _holds(self, row: _Row) -> bool:
        *made, digest = row
        return digest == _digest(*made) and self.state.of(map(tuple, json.loads(row[2]))) == row[3]

    def keep(self, name: str, made_from: str, reads: Iterable[Read], value: bytes) -> None:
        """Keep a value in place of any of the same name; it is written by `write`."""
        listed = sorted(reads)
        made = name, self._key(made_from), json.dumps(listed), self.state.of(listed), value
        self._used.add(name)
        self._fresh.append((*made, _digest(*made)))

    def write(self, *, whole: bool = False) -> None:
        """Write what is fresh. When the `whole` build is done, what it did not ask for is let go."""
        try:
            with self._open(make=True) as opened:
                if opened:
                    opened.executemany("INSERT OR REPLACE INTO made VALUES (?, ?, ?, ?, ?, ?)", self._fresh)
                    known = {name for (name,) in opened.execute("SELECT name FROM made")} if whole else set()
                    opened.executemany("DELETE FROM made WHERE name = ?", [(name,) for name in known - self._used])
                    opened.commit()
        except sqlite3.OperationalError:  # locked, or no room: the next build tries again
            pass
        except sqlite3.Error:  # broken somewhere within: the next build begins afresh
            self._drop()
        self._fresh.clear()

    def _key(self, made_from: str) -> str:
        return sha256(f"{self.general}\0{self.state.records}\0{made_from}".encode()).hexdigest()[:32]

    @contextmanager
    def _open(self, *, make: bool = False) -> Iterator[sqlite3.Connection | None]:
        """The file, open for a moment: other processes are never started while it is. None where it cannot be used."""
        opened = self._opened(make) or (self._opened(make) if make else None)
        if opened is None:
            yield None
            return
        with closing(opened):
            yield opened

    def _opened(self, make: bool) -> sqlite3.Connection | None:
        """The file with its table; one that is cut short, or of an earlier form, is taken away."""
        if self.file is None or not (make or self.file.is_file()):
            return None
        try:
            self.file.parent.mkdir(parents=True, exist_ok=True)
            opened = sqlite3.connect(self.file, timeout=60)
        except (OSError, sqlite3.Error):
            return None
        try:
            if not opened.execute("SELECT name FROM sqlite_master").fetchall():
                opened.execute(_TABLE)
            opened.execute(f"SELECT {_COLUMNS} FROM made LIMIT 0")
        except sqlite3.Error:
            opened.close()
            self._drop()
            return None
        return opened

    def _drop(self) -> None:
        for path in (self.file, self.file.with_name(f"{self.file.name}-journal")) if self.file else ():
            with suppress(OSError):
                path.unlink(missing_ok=True)


_Row = tuple[str, str, str, str, bytes, str]


def _digest(*made: object) -> str:
    total = sha256()
    for one in made:
        total.update(one if isinstance(one, bytes) else repr(one).encode("utf-8", "surrogatepass"))
        total.update(b"\0")
    return total.hexdigest()[:32]


def done_or_kept(tasks: Mapping[str, Task], kept: Kept) -> Parts:
    """What each task makes, or made when all that it reads stood as it stands now."""
    return (part for _, part in by_task(tasks, kept))


def by_task(tasks: Mapping[str, Task], kept: Kept) -> Iterator[tuple[str, list[tuple[str, str]]]]:
    """The name of each task with what it makes. A task that makes nothing is done again the next time."""
    found = kept.find({f"task {name}": "" for name in tasks})
    for name, value in found.items():
        yield name.removeprefix("task "), [(path, text) for path, text in json.loads(value)]
    rest = [name for name in tasks if f"task {name}" not in found]
    if rest:
        registry()  # made before the work is shared out: it takes long, and each process would make its own
    for name, (part, reads) in zip(rest, all_cores([partial(_noted, tasks[name]) for name in rest]), strict=True):
        if part:
            kept.keep(f"task {name}", "", reads, json.dumps(part, ensure_ascii=False).encode("utf-8"))
        yield name, part


def _noted(task: Task) -> tuple[list[tuple[str, str]], set[Read]]:
    with noted() as reads:
        part = task()
    return part, reads


def general(root: Path, *said: str) -> str:
    """A hash of what every page depends on; `said` is what else this build is told."""
    total = sha256()
    own = sorted(path for path in _PACKAGE.rglob("*") if path.is_file() and path.suffix != ".pyc")
    beside = [path for name in _BESIDE if (path := part_of_project(root, name)).is_file()]
    drawings = sorted((root / DRAWINGS).glob("*.svg"))
    schemas = sorted(schema_folder(root).glob("*.json"))
    for path in (*own, *beside, *drawings, *schemas):
        total.update(f"{path.name}\0".encode())
        total.update(sha256(path.read_bytes()).digest())
    installed = Path(jinja2.__file__).parents[1].glob("*.dist-info")
    for words in (sys.version, library_version(), *sorted(one.name for one in installed), *said):
        total.update(f"{words}\0".encode())
    return total.hexdigest()


@contextmanager
def sizes(kept: Kept) -> Iterator[dict[str, int]]:
    """What files took when they were packed, to be added to."""
    found = kept.find({"sizes": ""})
    known: dict[str, int] = json.loads(found["sizes"]) if found else {}
    yield known
    kept.keep("sizes", "", (), json.dumps(known).encode("utf-8"))
