"""What the page's own Python needs beside its core: the planner, the libraries it uses, the records and schemas.

All of it is one archive of the site. The libraries are taken from the environment that builds the site, each with its
licence; what they hold for other uses (time zones, other languages, tests) is left out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from importlib.metadata import Distribution, distribution
from pathlib import Path

import latchside
from latchside.archive import archive
from latchside.in_page.planner import RECORDS
from latchside.library.model import Library
from latchside.library.snapshot import snapshot
from latchside.root import schema_folder
from latchside.version import library_version

OWN = (
    "__init__", "archive", "collector", "figures", "findings", "in_page", "kinds", "library", "messages", "out",
    "packs", "planning", "read", "reads", "root", "schemas", "surveys", "version",
)  # fmt: skip
"""The parts of this package that a plan is made with."""
LIBRARIES = (
    "attrs", "babel", "defusedxml", "flexcache", "flexparser", "fluent.runtime", "fluent.syntax", "pint",
    "platformdirs", "pytz", "pyyaml", "typing_extensions",
)  # fmt: skip
"""What those parts import, and what that imports."""
_LOCALES = "root|en|en_001|en_GB"
_NEEDED = re.compile(rf"[^.].*\.py|pint/.*\.txt|babel/global\.dat|babel/locale-data/(?:{_LOCALES})\.dat|.*LICEN[CS]E.*")
_SPARED = re.compile(r".*/(?:tests?|testsuite|__pycache__)/.*|babel/messages/.*|.*__pyinstaller.*|\.\./.*")
_OTHER_MESSAGES = re.compile(
    r"messages/[a-z]+/(?:browser|charts|cli|drawings|order|pages|rules|site|templates|visits)/.*"
)


def parts(library: Library) -> bytes:
    """The archive, the same for the same library, version and environment."""
    assert library.root
    files = dict(_own())
    for name in LIBRARIES:
        files |= _installed(distribution(name))
    base = "latchside/base"
    for path in schema_folder(library.root).glob("*.schema.json"):
        files[f"{base}/schema/{path.name}"] = path.read_bytes()
    files[f"{base}/{RECORDS}"] = snapshot(library).encode("utf-8")
    version = library_version()
    files[f"latchside-{version}.dist-info/METADATA"] = f"Name: latchside\nVersion: {version}\n".encode()
    return archive(files, "python")


def _own() -> Iterator[tuple[str, bytes]]:
    folder = Path(latchside.__file__).parent
    for path in folder.rglob("*"):
        inside = path.relative_to(folder).as_posix()
        named = inside.partition("/")[0].removesuffix(".py") in OWN
        if named and path.suffix in (".py", ".ftl") and not _OTHER_MESSAGES.fullmatch(inside):
            yield f"latchside/{inside}", path.read_bytes()


def _installed(library: Distribution) -> Iterator[tuple[str, bytes]]:
    for file in library.files or ():
        name = file.as_posix()
        if _NEEDED.fullmatch(name) and not _SPARED.fullmatch(name):
            yield name, Path(str(library.locate_file(file))).read_bytes()
