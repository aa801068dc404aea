"""What more than one folder of tests draws on, each made once a run: the checked project and its site."""

from __future__ import annotations

import gc
import os
import pickle
from collections.abc import Callable, Iterator
from fcntl import LOCK_EX, flock
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

from latchside import all_cores
from latchside.library import Library
from latchside.project import Checked, check_project
from latchside.root import ROOT

from .long import LONG
from .node import Node

# The same examples on every run, on any machine: a test that fails once fails always. `make proof` tries more.
settings.register_profile("fixed", derandomize=True, max_examples=25, deadline=None)
settings.register_profile("long", derandomize=True, max_examples=500, deadline=None)
settings.load_profile("long" if LONG else "fixed")


_WORKER = os.environ.get("PYTEST_XDIST_WORKER", "")

LONG_FILES = (
    "test_planning.py", "test_survey_form.py", "test_using.py", "test_job_pack.py", "test_build.py",
    "test_reading.py", "test_visits_checklist.py", "test_offline_changing.py", "test_offline_saving.py",
    "test_offline_policy.py", "test_visits_page.py", "test_calculators.py", "test_kept.py", "test_offline_pocket.py",
)  # fmt: skip
"""Files of tests on the site that take longest, the longest first."""
NO_SITE = ("test_in_page.py", "test_pack_command.py", "test_questions.py", "test_rules.py")
"""Files that need no site and take about as long as a site takes to build."""


@pytest.hookimpl(optionalhook=True)  # not there without the plugin
def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """Two workers a core, for one waits for its browser while another works; `logical` is one, where none waits."""
    return (os.cpu_count() or 1) * (1 if config.option.numprocesses == "logical" else 2)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """What takes longest goes first; one worker builds the site while the others have files that need none.

    The workers draw files in turn. In the end there are small ones left, so that all are done at about one time.
    """
    files = dict.fromkeys(item.path for item in items)
    long = sorted((path for path in files if path.name in LONG_FILES), key=lambda path: LONG_FILES.index(path.name))
    none = [path for path in files if path.name in NO_SITE]
    site = [path for path in files if path.parent.name in ("browser", "site")]
    order = {path: at for at, path in enumerate(dict.fromkeys([*long[:1], *none, *long, *site, *files]))}
    items.sort(key=lambda item: order[item.path])


def pytest_collection_finish() -> None:
    """What is there now stays to the end: the garbage collector need not walk it again and again."""
    gc.freeze()
    gc.set_threshold(50_000, 20, 20)


@pytest.fixture(scope="session", autouse=True)
def no_more_processes() -> None:
    """A worker does all by itself: what it has read stays for the next test. Commands that it starts share out."""
    if _WORKER:
        all_cores.CORES = 1


@cache
def _shipped() -> Checked:
    return check_project(ROOT)


@pytest.fixture(scope="session")
def shipped() -> Checked:
    """The project as it stands, checked."""
    return _shipped()


@pytest.fixture(scope="session", autouse=True)
def checked_once() -> Iterator[None]:
    """A command that a test runs in its own process does not check the project as it stands once more."""

    def known(root: Path = ROOT, **how: Any) -> Checked:
        return _shipped() if root == ROOT and not how else check_project(root, **how)

    with pytest.MonkeyPatch.context() as patch:
        for module in ("project", "cli.visits", "cli.fault_order"):
            patch.setattr(f"latchside.{module}.check_project", known)
        yield


@pytest.fixture(scope="session")
def shipped_library(shipped: Checked) -> Library:
    assert not shipped.errors, [f"{finding.file}: {finding.found}" for finding in shipped.findings]
    return shipped.library


Once = Callable[[str, Callable[[], Any]], Any]


@pytest.fixture(scope="session")
def for_all(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The one folder of all workers of a run."""
    base = tmp_path_factory.getbasetemp()
    folder = (base.parent if _WORKER else base) / "for-all"
    folder.mkdir(exist_ok=True)
    return folder


@pytest.fixture(scope="session")
def once(for_all: Path) -> Once:
    """What takes long to make, made once for all workers of a run: `once(name, make)`."""

    def made(name: str, make: Callable[[], Any]) -> Any:
        with (for_all / f"{name}.lock").open("w") as lock:
            flock(lock, LOCK_EX)
            file = for_all / f"{name}.pickle"
            if not file.exists():
                file.write_bytes(pickle.dumps(make()))
            return pickle.loads(file.read_bytes())

    return made


@pytest.fixture(scope="session")
def build(once: Once, for_all: Path) -> tuple[Path, int]:
    """The folder of the built site, and how many warnings the build gave."""
    from latchside.site.build import build_site  # MkDocs is slow to import, and few tests need it

    folder = for_all / "site"
    return folder, once("built", lambda: build_site(ROOT, folder)[1])


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
