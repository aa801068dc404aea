"""What more than one folder of tests draws on, each made once a run: the checked project and its site."""

from __future__ import annotations

from collections.abc import Iterator
from fcntl import LOCK_EX, flock
from pathlib import Path

import pytest
from hypothesis import settings

from latchside.library import Library
from latchside.project import Checked, check_project
from latchside.root import ROOT

from .long import LONG
from .node import Node

# The same examples on every run, on any machine: a test that fails once fails always. `make proof` tries more.
settings.register_profile("fixed", derandomize=True, max_examples=50, deadline=None)
settings.register_profile("long", derandomize=True, max_examples=500, deadline=None)
settings.load_profile("long" if LONG else "fixed")


AT_FIRST = ("test_pack_command.py", "test_rules.py")
"""Files that need no site and take about as long as a site takes to build."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """What needs the site goes first, for it takes longest; one worker builds it while the other has files without.

    The workers draw files in turn. In the end there are small ones left, so that all are done at about one time.
    """
    files = dict.fromkeys(item.path for item in items)
    first = [path for path in files if path.name in AT_FIRST]
    site = [path for path in files if path.parent.name in ("browser", "site")]
    drawn = [path for pair in zip(first, site, strict=False) for path in pair]
    order = {path: at for at, path in enumerate(dict.fromkeys([*drawn, *first, *site, *files]))}
    items.sort(key=lambda item: order[item.path])


@pytest.fixture(scope="session")
def shipped() -> Checked:
    """The project as it stands, checked."""
    return check_project(ROOT)


@pytest.fixture(scope="session")
def shipped_library(shipped: Checked) -> Library:
    assert not shipped.errors, [f"{finding.file}: {finding.found}" for finding in shipped.findings]
    return shipped.library


@pytest.fixture(scope="session")
def build(tmp_path_factory: pytest.TempPathFactory, worker_id: str) -> tuple[Path, int]:
    """The folder of the built site, and how many warnings the build gave: built once for all workers of a run."""
    from latchside.site.build import build_site  # MkDocs is slow to import, and few tests need it

    base = tmp_path_factory.getbasetemp()
    folder = (base if worker_id == "master" else base.parent) / "built"
    folder.mkdir(exist_ok=True)
    with (folder / "lock").open("w") as lock:
        flock(lock, LOCK_EX)
        given = folder / "warnings"
        if not given.exists():
            _, warnings = build_site(ROOT, folder / "site")
            given.write_text(str(warnings))
        return folder / "site", int(given.read_text())


@pytest.fixture(scope="session")
def site(build: tuple[Path, int]) -> Path:
    """The folder of the built site."""
    return build[0]


@pytest.fixture(scope="session")
def node() -> Iterator[Node]:
    """JavaScript without a browser."""
    started = Node()
    yield started
    started.close()
