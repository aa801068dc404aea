"""`latchside plan --cluster`: the packs of a cluster are those of this machine, also where a worker is lost on the way.

Dask is an extra and in no lock: where it is not installed the proof is skipped, and says so.
"""

from __future__ import annotations

import os
import subprocess
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import pytest

from latchside.cluster import MISSING, NoClusterError, joined

from .test_pack_command import COMMAND, contents, written

HERE = find_spec("distributed") is not None
needed = pytest.mark.skipif(not HERE, reason="Dask is not installed (pip install 'latchside[cluster]'): nothing to ask")
SURVEYS = 9
KILLED = "house-04"
"""The survey at which the worker that plans it is killed, the first time that it is planned."""
KILLING = f"""
import os, signal
from pathlib import Path
from latchside.planning import make
real = make.real = getattr(make, "real", make.make_plan)  # this may be run twice in a process
def make_plan(survey, *rest):
    mark = Path(os.environ["LATCHSIDE_TEST_MARK"])
    if survey.id == "{KILLED}" and not mark.exists():
        mark.touch()
        os.kill(os.getpid(), signal.SIGKILL)
    return real(survey, *rest)
make.make_plan = make_plan
"""
"""What the workers run when they start."""


@pytest.mark.skipif(HERE, reason="Dask is installed")
def test_without_dask_it_is_said_what_to_install() -> None:
    with pytest.raises(NoClusterError) as told:
        joined("tcp://127.0.0.1:1")
    assert str(told.value) == MISSING


@pytest.fixture
def cluster(tmp_path: Path) -> Iterator[str]:
    """The address of two worker processes of one thread each; one of them is going to be killed, and comes again."""
    import distributed  # type: ignore[import-not-found, unused-ignore]

    (tmp_path / "killing.py").write_text(KILLING, "utf-8")
    os.environ["LATCHSIDE_TEST_MARK"] = str(tmp_path / "mark")
    preload: dict[str, Any] = {"preload": [str(tmp_path / "killing.py")]}
    with distributed.LocalCluster(2, threads_per_worker=1, processes=True, dashboard_address=None, **preload) as made:
        yield made.scheduler_address
    del os.environ["LATCHSIDE_TEST_MARK"]


@needed
def test_a_killed_worker_costs_nothing(cluster: str, tmp_path: Path) -> None:
    for number in range(SURVEYS):
        written(tmp_path / "in", f"house-{number:02}", f"House {number}")
    alone = _planned(tmp_path / "in", tmp_path / "alone")
    shared = _planned(tmp_path / "in", tmp_path / "shared", "--cluster", cluster)
    assert (tmp_path / "mark").exists(), "no worker was killed"
    assert shared.stdout == alone.stdout
    assert contents(tmp_path / "shared") == contents(tmp_path / "alone")
    assert len(list((tmp_path / "shared").iterdir())) == SURVEYS


def _planned(surveys: Path, out: Path, *more: str) -> subprocess.CompletedProcess[str]:
    command = [*COMMAND, str(surveys), "--out", str(out), *more]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert "Traceback" not in done.stderr, done.stderr
    return done


@needed
def test_a_cluster_that_is_not_there_is_said(tmp_path: Path) -> None:
    survey = written(tmp_path, "elm", "Elm")
    done = subprocess.run([*COMMAND, str(survey), "--cluster", "tcp://127.0.0.1:9"], capture_output=True, check=False)
    assert done.returncode == 1
    assert b"No cluster answers at tcp://127.0.0.1:9" in done.stderr
