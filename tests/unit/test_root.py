"""A command works on the project it is given: its schemas, its figures and its tables, not those it came with."""

from __future__ import annotations

import json
import shutil
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from latchside.cli import main
from latchside.pages.job_pages import plan_of
from latchside.project import check_project
from latchside.root import ROOT

from .support import change, lay

FORMULA = "shared/formulas/ladder.yaml"
STEEPER = (
    ("value: 0.25, unit: count", "value: 0.5, unit: count"),
    ("{setback_m: 1, height_m: 3.873, ladder_length_m: 4, angle_deg: 75.522}",
     "{setback_m: 2, height_m: 3.4641, ladder_length_m: 4, angle_deg: 60}"),
    ("{setback_m: 0.7746, ladder_length_m: 4.028, angle_deg: 75.522}",
     "{setback_m: 1.73205, ladder_length_m: 4.5034, angle_deg: 60}"),
    ("Before one is used at all:", "What this firm asks: [[table/ladder-rules]]. Before one is used at all:"),
)  # fmt: skip
"""A ladder stands out half of its working length: at a support 3 m up 3 ÷ √(1 − 0.5²) × 0.5 = 1.73 m, and not 0.77."""
RULES = """\
id: ladder-rules
name: Ladders of this firm
summary: What this firm asks of a ladder.
version: 1
review: {by: not yet, on: not yet, trial: not yet}
basis: [{status: common practice}]
columns: [{id: what, name: What}, {id: asked, name: Asked}]
rows: [{id: foot, cells: {what: Foot, asked: Footed by a second person}, status: common practice}]
reads: A house rule.
"""
SURVEY: dict[str, Any] = {
    "id": "high-window", "name": "High window", "surveyed": "2026-03-09",
    "openings": [{
        "id": "w", "place": "Hall", "kind": "casement", "height": "3 m", "fire_rated": "no", "escape": "no",
        "powered": "no", "hardware": [], "gap": "3 mm", "play": "1 mm", "leaf_material": "wood",
        "frame_material": "wood", "steel": "none", "glazed": "no", "cable": "no", "old_contact": "no", "drill": "yes",
    }],
}  # fmt: skip


@pytest.fixture(scope="module")
def firm(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the project in which a formula says something else and a table was added; it has no schemas."""
    root = tmp_path_factory.mktemp("firm")
    for folder in ("content", "checklists", "shared"):
        shutil.copytree(ROOT / folder, root / folder)
    for old, new in STEEPER:
        change(root, FORMULA, old, new)
    (root / "shared" / "tables" / "ladder-rules.yaml").write_text(RULES, "utf-8")
    return root


def run(*arguments: str | Path) -> str:
    result = CliRunner().invoke(main, [str(one) for one in arguments])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.output


def test_a_plan_is_worked_from_the_figures_of_its_project(firm: Path, tmp_path: Path) -> None:
    survey = tmp_path / "survey.json"
    survey.write_text(json.dumps(SURVEY), "utf-8")
    assert "foot 1.75\u00a0m" in run("plan", survey, "--json", "--root", firm)
    assert "foot 0.8\u00a0m" in run("plan", survey, "--json")


def test_a_job_of_a_project_is_planned_from_the_figures_of_its_library(firm: Path) -> None:
    library = check_project(firm).library
    (record,) = (one for one in library.of("job") if one.id == "foil-house")
    changed = replace(record, _data={**record.data, "openings": SURVEY["openings"]})
    (line,) = (line for line in plan_of(changed, library).openings[0].figures if line.figure == "ladder")
    assert "foot 1.75\u00a0m" in line.shown


def test_the_pages_of_a_project_are_written_from_its_records_alone(tmp_path: Path) -> None:
    small, out = lay(tmp_path / "small"), tmp_path / "pages"
    text = (ROOT / FORMULA).read_text("utf-8")
    for old, new in (*STEEPER, ("caution/ladders", "caution/wet-paint"), (", source: hse-ladders", "")):
        assert text.count(old) == 1
        text = text.replace(old, new)
    text = text.replace("cfr-29-1926-1053", "bench-notes").replace("status: standard", "status: handbook")
    (small / FORMULA).write_text(text.replace("{status: handbook, note", "{status: common practice, note"), "utf-8")
    (small / "shared" / "tables" / "ladder-rules.yaml").write_text(RULES, "utf-8")
    assert " pages in " in run("render", "--root", small, "--out", out)
    assert "Footed by a second person" in (out / "tables/ladder-rules/index.md").read_text("utf-8")
    assert {path.name for path in (out / "assets/charts").iterdir()} == {"ladder-geometry.svg"}
    assert "foot 2\u00a0m out" in (out / "assets/charts/ladder-geometry.svg").read_text("utf-8")
    assert '"set_back_share":0.5' in (out / "assets/js/figure/figures.js").read_text("utf-8")


def test_a_figure_names_its_status_in_the_words_of_its_project(firm: Path) -> None:
    shutil.copytree(ROOT / "schema", firm / "schema")
    try:
        change(firm, "schema/vocabulary.schema.json", '"handbook or official guidance"', '"out of a book"')
        assert "out of a book" in run("figure", "ladder", "working_length_m=4", "--root", firm)
    finally:
        shutil.rmtree(firm / "schema")
