"""The planner in a page plans as the command does: the same records, the same plan, the same file."""

from __future__ import annotations

import gzip
import io
import json
import shutil
import subprocess
import zipfile
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from latchside.cli import main
from latchside.figures.catalogue import figures_of
from latchside.in_page.parts import parts
from latchside.library import Library
from latchside.library.snapshot import library_from, snapshot
from latchside.packs.data import plan_json
from latchside.planning.glance import glance
from latchside.planning.make import make_plan
from latchside.planning.plan import Plan
from latchside.read.yaml_text import read_text
from latchside.root import ROOT
from latchside.surveys.build import build

from ..long import LONG
from ..node import NODE

DAY, SITE = "2026-11-27", "https://field.example/library/"
SHIPPED, TRIED = (
    [path for path in sorted((ROOT / folder).glob("*.yaml")) if not path.stem.endswith(".answers")]
    for folder in ("content/jobs", "tests/jobs")
)
SURVEYS = {
    path.stem: {"surveyed": DAY, **read_text(path.read_text("utf-8"), path.name).value}
    for path in (*SHIPPED, *TRIED[:: 1 if LONG else 8])
}
"""The jobs that are shipped, and the surveys of the tests: all of them in the long run, else three."""
PYODIDE = ROOT / "content/assets/js/vendor/pyodide"
RUN = """
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
const [core, parts, asked, told, day, site] = process.argv.slice(2);
const { loadPyodide } = await import(`file://${core}/pyodide.mjs`);
const info = { abi_version: "2026_0", arch: "wasm32", platform: "emscripten_5_0_3", python: "3.14.2" };
const lockFileContents = { info, packages: {} };
const python = await loadPyodide({ indexURL: `${core}/`, lockFileContents, packageBaseUrl: "x:/" });
python.unpackArchive(new Uint8Array(readFileSync(parts)), "zip", { extractDir: "/" });
python.runPython("import sys; sys.path.insert(0, '/python')");
const planner = python.pyimport("latchside.in_page.planner");
const survey_file = (survey) => `${JSON.stringify(survey, null, 2)}\n`;
const made = {};
for (const [name, survey] of Object.entries(JSON.parse(readFileSync(asked, "utf8")))) {
  const text = JSON.stringify(survey);
  const visit = planner.visit_file(survey_file(survey), day);
  made[name] = [planner.plan_file(text, day), planner.planned(text, day), visit];
  const pack = planner.pack_files(survey_file(survey), day, "", site).toJs();
  mkdirSync(`${told}.packs/${name}`, { recursive: true });
  for (const [file, content] of Object.entries(pack)) writeFileSync(`${told}.packs/${name}/${file}`, content);
}
writeFileSync(told, JSON.stringify(made));
"""


def plan_of(data: dict[str, Any], library: Library) -> Plan:
    survey, _ = build(data)
    return make_plan(survey, library, figures_of(library), survey.surveyed or date.fromisoformat(DAY))


@pytest.fixture(scope="module")
def archive(library: Library) -> bytes:
    return parts(library)


@pytest.fixture(scope="module")
def made(archive: bytes, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """What the browser's Python makes of each survey, in Node, from the very files that the site serves."""
    folder = tmp_path_factory.mktemp("in-page")
    for path in PYODIDE.iterdir():
        if path.suffix == ".gz":
            (folder / path.stem).write_bytes(gzip.decompress(path.read_bytes()))
        else:
            shutil.copy(path, folder)
    run, zipped, asked, told = (folder / name for name in ("run.mjs", "planner.zip", "asked.json", "told.json"))
    run.write_text(RUN, "utf-8")
    zipped.write_bytes(archive)
    asked.write_text(json.dumps(SURVEYS), "utf-8")
    command = [str(NODE), str(run), str(folder), str(zipped), str(asked), str(told), DAY, SITE]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr[-2000:]
    made: dict[str, Any] = json.loads(told.read_text("utf-8"))
    packs = Path(f"{told}.packs")
    return {name: [*texts, files_in(packs / name)] for name, texts in made.items()}


def files_in(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


@pytest.fixture(scope="module")
def commanded(tmp_path_factory: pytest.TempPathFactory) -> dict[str, dict[str, bytes]]:
    """What the command writes for the same files."""
    folder, out = tmp_path_factory.mktemp("surveys"), tmp_path_factory.mktemp("packs")
    for name, survey in SURVEYS.items():
        (folder / f"{name}.json").write_text(json.dumps(survey, ensure_ascii=False, indent=2) + "\n", "utf-8")
    CliRunner().invoke(main, ["plan", str(folder), "--out", str(out), "--address", SITE])
    return {name: files_in(out / survey["id"]) for name, survey in SURVEYS.items() if (out / survey["id"]).exists()}


@pytest.mark.slow
@pytest.mark.parametrize("name", SURVEYS)
def test_a_page_and_a_command_make_the_same_file(name: str, made: dict[str, Any], library: Library) -> None:
    assert made[name][0] == plan_json(plan_of(SURVEYS[name], library))


@pytest.mark.slow
def test_a_page_and_a_command_write_the_same_packs(
    made: dict[str, Any], commanded: dict[str, dict[str, bytes]]
) -> None:
    for name, (*_, visit, packed) in made.items():
        files = dict(packed)
        assert visit.encode("utf-8") == files["visit.json"]
        zipped = files.pop("pack.zip")
        by_command = commanded[name].copy()
        by_command.pop("pack.zip")
        assert files == by_command
        with zipfile.ZipFile(io.BytesIO(zipped)) as opened:
            assert {one.partition("/")[2]: opened.read(one) for one in opened.namelist()} == files


@pytest.mark.slow
@pytest.mark.parametrize("name", SURVEYS)
def test_a_page_shows_what_the_plan_says(name: str, made: dict[str, Any], library: Library) -> None:
    plan = plan_of(SURVEYS[name], library)
    shown = json.loads(made[name][1])["glance"]
    loaded = shown.pop("items")
    assert shown == json.loads(json.dumps(glance(plan, library)))
    assert [one["name"] for one in loaded] == [one.name for one in plan.items]
    assert [one["spoken"] for one in shown["openings"]] == [one.spoken for one in plan.openings]
    told = {problem["found"] for one in (shown, *shown["openings"]) for problem in one["problems"]}
    assert told == {problem.found for problem in plan.problems}
    order = dict[str, int]()
    for question in plan.questions:
        order[question.text] = min(question.order, order.get(question.text, question.order))
    asked = [order[question["text"]] for question in shown["questions"]]
    assert asked == sorted(order.values())
    assert not [
        one for one in shown["openings"] if one["problems"] and one["bearing"] not in ("problem", "no-device-yet")
    ]


def test_a_snapshot_is_the_library(library: Library) -> None:
    again = library_from(snapshot(library), library.schemas)
    assert {one.key: one.data for one in again} == {one.key: one.data for one in library}
    assert snapshot(again) == snapshot(library)


def test_the_parts_are_the_same_each_time_and_hold_what_is_needed_alone(library: Library, archive: bytes) -> None:
    assert parts(library) == archive
    with zipfile.ZipFile(io.BytesIO(archive)) as opened:
        names = opened.namelist()
        records = json.loads(opened.read("python/latchside/base/records.json"))
    assert all(name.startswith("python/") and ".." not in name for name in names)
    assert not [name for name in names if name.startswith(("python/latchside/cli/", "python/latchside/site/"))]
    assert sum("LICEN" in name for name in names) >= 8  # those of the libraries travel with them
    assert set(records["device"]) == {one.id for one in library.of("device")}
    stored = sum(path.stat().st_size for path in PYODIDE.iterdir() if path.suffix in (".gz", ".zip"))
    text = len(gzip.compress((PYODIDE / "pyodide.asm.mjs").read_bytes(), 6))
    assert len(archive) + stored + text < 8_000_000


def test_a_length_that_cannot_be_read_is_told_and_its_opening_alone_left_out(
    library: Library, monkeypatch: pytest.MonkeyPatch
) -> None:
    from latchside.in_page import planner

    monkeypatch.setattr(planner, "library", lambda: library)
    survey = json.loads(json.dumps(SURVEYS["foil-house"]))
    survey["openings"][0]["gap"] = "two thumbs"
    told = json.loads(planner.planned(json.dumps(survey), DAY))
    assert [one["path"][:2] for one in told["unread"]] == [["openings", 0]]
    assert len(told["glance"]["openings"]) == len(survey["openings"]) - 1
    survey["openings"] = survey["openings"][:1]
    assert json.loads(planner.planned(json.dumps(survey), DAY))["glance"] is None


def test_figures_are_written_to_nine_digits() -> None:
    from latchside.packs.data import _plain

    assert _plain([0.1 + 0.2, 2 / 3, 1e-12 / 3, 12.0, 123456789.4, float("inf")]) == [
        0.3, 0.666666667, 3.33333333e-13, 12, 123456789, None,
    ]  # fmt: skip
