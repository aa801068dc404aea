"""How fast plans of jobs are made: run by hand, or by `make bench` beside the others.

Each line is a figure to write into the guide for maintainers, with the limit it is held to. The surveys are generated,
with answers of every kind and some missing, and the same on every run.
"""

from __future__ import annotations

import json
import os
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from random import Random
from typing import Any

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "scripts")]

VOCABULARY = json.loads((ROOT / "schema" / "vocabulary.schema.json").read_text("utf-8"))["$defs"]
SIZES = (250, 500, 1000)
OPENINGS = 12

ONE = """
import json, sys, time
start = time.perf_counter()
from datetime import date
from pathlib import Path
from latchside.figures.catalogue import catalogue
from latchside.planning.make import make_plan
from latchside.surveys.read import survey_of
from latchside.project import check_project
from latchside.root import ROOT
library, figures = check_project(ROOT).library, catalogue()
survey = survey_of(json.loads(Path(sys.argv[1]).read_text("utf-8")))
ready, work = time.perf_counter(), time.process_time()
plan = make_plan(survey, library, figures, date(2026, 3, 9))
done, work = time.perf_counter(), time.process_time() - work
chosen = sum(one.choice.device is not None for one in plan.openings)
times = {"start": ready - start, "plan": done - ready, "work": work}
print(json.dumps({**times, "openings": len(plan.openings), "chosen": chosen}))
"""


def word(chance: Random, vocabulary: str, left_out: float = 0.05) -> str | None:
    """A word of a vocabulary, now and then none."""
    return None if chance.random() < left_out else chance.choice(VOCABULARY[vocabulary]["enum"])


def opening(chance: Random, number: int) -> dict[str, Any]:
    """An opening with answers of every kind, some of them missing."""
    answers: dict[str, Any] = {
        "kind": word(chance, "opening", 0),
        "leaf_material": word(chance, "leaf-material"),
        "frame_material": word(chance, "leaf-material"),
        "steel": word(chance, "steel"),
        "use": word(chance, "use"),
        "wish": word(chance, "wish"),
        "outer_wall": word(chance, "outer-wall"),
        **{field: word(chance, "answer") for field in ("fire_rated", "escape", "cable", "outdoors", "drill")},
        "play": chance.choice([None, 1, 2, 5]),
        "gap": chance.choice([None, 2, 4, 8, 15]),
        "step": chance.choice([None, 0, 3, -2]),
        "height": chance.choice([None, 1.2, 2.1, 3.4]),
        "distance": chance.choice([None, 4, 11.5, 37]),
        "floors": chance.choice([None, 0, 1, 2]),
        "cable_length": chance.choice([None, 8, 21.5]),
        "walls": chance.choice([None, [], [{"material": "brick", "thickness": 0.2}], [{"material": "foil"}]]),
    }
    given = {name: value for name, value in answers.items() if value is not None}
    return {"id": f"opening-{number}", "place": f"Room {number}", "side": chance.choice(["front", "rear"]), **given}


def survey(number: int, openings: int) -> dict[str, Any]:
    """A survey of so many openings."""
    chance = Random(number)
    unit = {"wired_positions": openings, "radio_positions": openings, "frequency": 868.3, "layout": "series"}
    return {
        "id": f"job-{number}", "name": f"House {number}", "surveyed": date(2026, 3, 9).isoformat(),
        "site": {"region": word(chance, "region", 0), "year_built": 1900 + number % 120, "monitored": "yes"},
        "control_unit": unit, "openings": [opening(chance, one) for one in range(openings)],
    }  # fmt: skip


@contextmanager
def written(surveys: int, openings: int) -> Iterator[Path]:
    """A folder of surveys."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name) / "surveys"
        folder.mkdir()
        for number in range(surveys):
            text = json.dumps(survey(number, openings), ensure_ascii=False)
            (folder / f"job-{number}.json").write_text(text, "utf-8")
        yield folder


def one_large() -> None:
    """500 openings in one survey, after start."""
    with written(1, 500) as folder:
        command = [sys.executable, "-c", ONE, str(folder / "job-0.json")]
        done = subprocess.run(command, capture_output=True, text=True, check=True)
    told = json.loads(done.stdout)
    print(
        f"{told['openings']} openings planned in {told['plan']:.2f} s (limit 2), {told['work']:.2f} s of it the "
        f"processor's; {told['chosen']} with a device; start {told['start']:.2f} s"
    )


def many(surveys: int, *, packs: bool) -> tuple[float, float]:
    """Seconds for a folder of surveys, and the largest memory of any one process in MB."""
    with written(surveys, OPENINGS) as folder:
        out = ["--out", str(folder.parent / "packs")] if packs else []
        command = [sys.executable, "-m", "latchside.cli", "plan", str(folder), *out]
        start = time.perf_counter()
        done = subprocess.run(command, capture_output=True, text=True, check=False)
        took = time.perf_counter() - start
        if done.returncode not in (0, 1) or done.stdout.count("\n") < surveys:
            raise SystemExit(done.stderr[-2000:])
    return took, resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024


def main() -> None:
    """Print every figure. The memory is the largest so far, so sizes go upwards."""
    one_large()
    cores = os.cpu_count()
    for packs in (False, True):
        what = "planned, and packs written" if packs else "planned"
        for surveys in SIZES:
            took, memory = many(surveys, packs=packs)
            each = f"{took / surveys * 1000:.0f} ms each"
            print(
                f"{surveys} surveys of {OPENINGS} openings {what}: {took:.1f} s, {each}, {memory:.0f} MB, {cores} cores"
            )


if __name__ == "__main__":
    main()
