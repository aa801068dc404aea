"""A firm's own figures: read from a file with its errors in plain words, and planned with, by command and in a page."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from latchside.cli import main
from latchside.in_page import planner
from latchside.library import Library
from latchside.pages.survey_form import survey_form
from latchside.planning.own_rules import read_own, rules
from latchside.read.yaml_text import read_text
from latchside.root import ROOT

from ..node import Node, messages_of_pages

SURVEY = ROOT / "content/jobs/foil-house.yaml"
OWN = {"values": {"spare-least": {"value": 3, "unit": "count"}, "move-minutes": {"value": 30, "unit": "min"}}}
WRONG = {
    "unknown-rule": {"spare-percentage": {"value": 30, "unit": "%"}},
    "no-figure": {"spare-percent": {"value": "many", "unit": "%"}},
    "other-unit": {"cable-spare": {"value": 2, "unit": "mm"}},
    "not-whole": {"technicians": {"value": 1.5, "unit": "count"}},
    "out-of-range": {"day-minutes": {"value": 0, "unit": "min"}},
}


def codes(text: str, library: Library) -> list[str]:
    own, findings = read_own(text, "house.yaml", library)
    assert not (own and findings)
    return [one.code for one in findings]


def planned(*given: object) -> Any:
    return json.loads(CliRunner().invoke(main, ["plan", str(SURVEY), "--json", *map(str, given)]).stdout)


@pytest.mark.parametrize("code", WRONG)
def test_what_is_wrong_is_told_with_its_place(code: str, library: Library) -> None:
    assert codes(json.dumps({"values": WRONG[code]}), library) == [code]


def test_a_file_without_values_or_of_no_form_is_refused(library: Library) -> None:
    assert codes("spare-percent: 30", library) == ["no-values"]
    assert codes("values: [", library)


def test_the_table_of_the_library_itself_is_a_file_of_house_rules(library: Library) -> None:
    own, findings = read_own((ROOT / "shared/tables/house-rules.yaml").read_text("utf-8"), "house.yaml", library)
    assert not findings
    assert own == {name: rule.value for name, rule in rules(library).items()}


def test_the_command_plans_with_a_firms_own_figures_and_a_page_does_so_too(
    tmp_path: Path, library: Library, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "house.json"
    file.write_text(json.dumps(OWN), "utf-8")
    ours, theirs = planned(), planned("--house", file)
    spares = [sum(item["spare"] for item in plan["items"] if item["sort"] == "part") for plan in (ours, theirs)]
    assert spares[1] > spares[0]
    monkeypatch.setattr(planner, "library", lambda: library)
    planner._with.cache_clear()
    survey = json.dumps(read_text(SURVEY.read_text("utf-8"), SURVEY.name).value)
    assert json.loads(planner.plan_file(survey, "2026-11-27", json.dumps(OWN))) == theirs
    assert json.loads(planner.plan_file(survey, "2026-11-27")) == ours
    planner._with.cache_clear()


def test_the_command_plans_nothing_with_house_rules_that_are_wrong(tmp_path: Path) -> None:
    file = tmp_path / "house.yaml"
    file.write_text(json.dumps({"values": WRONG["other-unit"]}), "utf-8")
    result = CliRunner().invoke(main, ["plan", str(SURVEY), "--house", str(file), "--out", str(tmp_path / "pack")])
    assert result.exit_code == 1
    assert "cable-spare" in result.stderr
    assert not (tmp_path / "pack").exists()


@pytest.fixture(scope="module")
def scripts(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The scripts of the page with their words."""
    folder = tmp_path_factory.mktemp("scripts")
    for path in ("survey/house.js", "core/message.js"):
        target = folder / "assets/js" / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text((ROOT / "content/assets/js" / path).read_text("utf-8"), "utf-8")
    messages_of_pages(folder)
    return folder


def test_a_page_refuses_and_writes_what_the_command_does(node: Node, scripts: Path, library: Library) -> None:
    form = json.loads(str(survey_form(library)))["house"]
    call = """async ([script, rules, values, typed]) => {
      const { fromFile, houseText } = await import(script);
      const refused = values.map((one) => "fault" in fromFile(rules, JSON.stringify({ values: one })));
      return [refused, houseText(rules, typed)];
    }"""
    script = (scripts / "assets/js/survey/house.js").as_uri()
    typed = {"spare-percent": "12,5", "technicians": "2", "day-minutes": "0", "cable-spare": ""}
    values = [*WRONG.values(), OWN["values"]]
    refused, text = node.evaluate(call, [script, form, values, typed])
    assert refused == [True] * len(WRONG) + [False]
    assert read_own(text, "house-rules.json", library) == ({"spare-percent": 12.5, "technicians": 2}, ())
