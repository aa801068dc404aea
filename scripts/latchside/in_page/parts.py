"""What the page's own Python needs beside its core: the planner, the libraries it uses, the records and schemas.

All of it is one archive of the site. The libraries are taken from the environment that builds the site, each with its
licence; what they hold for other uses (time zones, other languages, tests) is left out.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from hashlib import sha256
from importlib.metadata import Distribution, distribution
from pathlib import Path
from zipfile import is_zipfile

import latchside
from latchside.archive import archive
from latchside.in_page.planner import RECORDS
from latchside.kinds import DRAWINGS
from latchside.library.model import Library
from latchside.library.snapshot import snapshot
from latchside.packs.document import STYLES
from latchside.root import part, schema_folder
from latchside.version import library_version

OWN = (
    "__init__", "archive", "collector", "drawings", "escape", "figures", "findings", "in_page", "kinds",
    "library", "markup", "messages", "out", "packs", "planning", "qr", "read", "reads", "root", "schemas", "surveys",
    "templates", "templating", "version", "visits",
)  # fmt: skip
"""The parts of this package that a plan and its pack are made with."""
LIBRARIES = (
    "attrs", "babel", "defusedxml", "flexcache", "flexparser", "fluent.runtime", "fluent.syntax", "icalendar",
    "jinja2", "markupsafe", "pint", "platformdirs", "python-dateutil", "pytz", "pyyaml", "segno", "typing_extensions",
    "tzdata",
)  # fmt: skip
"""What those parts import, and what that imports."""
_LOCALES = "root|en|en_001|en_GB"
_NEEDED = re.compile(
    rf"[^.].*\.py|pint/.*\.txt|babel/global\.dat|tzdata/zoneinfo/UTC|babel/locale-data/(?:{_LOCALES})\.dat|.*LICEN[CS]E.*"
)
_SPARED = re.compile(
    r".*/(?:tests?|testsuite|__pycache__)/.*|babel/messages/.*|dateutil/(?:parser|zoneinfo)/.*|.*__pyinstaller.*|\.\./.*"
)
_OTHER_MESSAGES = re.compile(r"messages/[a-z]+/(?:browser|cli|order|pages|rules|site)/.*")


def parts(library: Library, kept_in: Path | None = None) -> bytes:
    """The archive, the same for the same library, version and environment.

    It is packed only where `kept_in`, a folder, has none of the same files.
    """
    files = dict(sorted(_files(library).items()))
    if kept_in is None:
        return archive(files, "python")
    digest = sha256(b"".join(sha256(name.encode() + b"\0" + one).digest() for name, one in files.items()))
    kept = kept_in / "planner" / f"{digest.hexdigest()}.zip"
    if not is_zipfile(kept):  # is not there, or was cut short
        _keep(kept, archive(files, "python"))
    return kept.read_bytes()


def _keep(path: Path, content: bytes) -> None:
    """Keep a file in place of all others of its folder."""
    path.parent.mkdir(parents=True, exist_ok=True)
    for other in path.parent.iterdir():
        other.unlink(missing_ok=True)
    written = path.with_suffix(f".{os.getpid()}")
    written.write_bytes(content)
    written.replace(path)


def _files(library: Library) -> dict[str, bytes]:
    assert library.root
    files = dict(_own())
    for name in LIBRARIES:
        files |= _installed(distribution(name))
    base = "latchside/base"
    for name in (*(f"content/assets/{one}" for one in STYLES), *sorted(_drawings(library.root))):
        files[f"{base}/{name}"] = part(library.root, name).read_bytes()
    for path in schema_folder(library.root).glob("*.schema.json"):
        files[f"{base}/schema/{path.name}"] = path.read_bytes()
    files[f"{base}/{RECORDS}"] = snapshot(library).encode("utf-8")
    version = library_version()
    files[f"latchside-{version}.dist-info/METADATA"] = f"Name: latchside\nVersion: {version}\n".encode()
    return files


def _drawings(root: Path) -> Iterator[str]:
    """The drawings that a pack shows, those of openings."""
    return (f"{DRAWINGS}/{path.name}" for path in (root / DRAWINGS).glob("opening-*.svg"))


def _own() -> Iterator[tuple[str, bytes]]:
    folder = Path(latchside.__file__).parent
    for path in folder.rglob("*"):
        inside = path.relative_to(folder).as_posix()
        named = inside.partition("/")[0].removesuffix(".py") in OWN
        if named and path.suffix in (".py", ".ftl", ".jinja") and not _OTHER_MESSAGES.fullmatch(inside):
            yield f"latchside/{inside}", path.read_bytes()


def _installed(library: Distribution) -> Iterator[tuple[str, bytes]]:
    for file in library.files or ():
        name = file.as_posix()
        if _NEEDED.fullmatch(name) and not _SPARED.fullmatch(name):
            yield name, Path(str(library.locate_file(file))).read_bytes()
