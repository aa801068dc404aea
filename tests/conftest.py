"""What more than one folder of tests draws on, each made once a run: the checked project, its site, a browser."""

from __future__ import annotations

from collections.abc import Iterator
from fcntl import LOCK_EX, flock
from pathlib import Path

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, Playwright, sync_playwright

from latchside.library import Library
from latchside.project import Checked, check_project
from latchside.root import ROOT

from .chromium import launch

# The same examples on every run, on any machine: a test that fails once fails always.
settings.register_profile("fixed", derandomize=True, max_examples=100, deadline=None)
settings.load_profile("fixed")


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
def playwright() -> Iterator[Playwright]:
    """The driver of browsers; a thread can hold only one."""
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    launched = launch(playwright)
    yield launched
    launched.close()
