"""One bad survey never costs another: what goes wrong with it is a finding, and the run goes on."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from latchside.cli import main

SMALL = """\
id: {id}
name: {name}
surveyed: "{day}"
site: {{region: europe, year_built: 1999, occupied: no, monitored: no, keyholder_arranged: yes}}
openings:
  - {{id: back-door, place: Kitchen, side: rear, kind: hinged-door}}
"""


def survey(folder: Path, id_: str, day: str = "2026-03-09") -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{id_}.yaml"
    path.write_text(SMALL.format(id=id_, name=id_.title(), day=day), "utf-8")
    return path


def run(*arguments: object) -> Result:
    result = CliRunner().invoke(main, [str(one) for one in arguments])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


@pytest.mark.parametrize("day", ["9999-12-31", "0001-01-01", "2100-01-01"])
def test_a_day_far_away_is_refused_in_one_line(day: str, tmp_path: Path) -> None:
    result = run("plan", survey(tmp_path, "elm"), "--date", day)
    assert result.exit_code == 1
    assert "2000 to 2099" in result.output
    found = run("plan", survey(tmp_path, "oak", day))
    assert found.exit_code == 1
    assert "surveyed" in found.stderr
    assert "from 2000 to 2099" in found.stderr
    assert "--date" in found.stderr
    assert found.stderr.count("\n  found ") == 1, "the day that was written is said, and not that there was none"


@pytest.mark.parametrize("day", ["2000-01-01", "2099-12-31"])
def test_the_first_and_the_last_day_are_planned(day: str, tmp_path: Path) -> None:
    assert f"planned for {day}" in run("plan", survey(tmp_path, "elm", day)).output


def test_a_strange_day_costs_no_other_survey(tmp_path: Path) -> None:
    """Those before and after it are planned and written. Many over all cores: see the tests of the command."""
    for number in range(3):
        survey(tmp_path / "in", f"house-{number}", "9999-12-31" if number == 1 else "2026-03-09")
    done = run("plan", tmp_path / "in", "--out", tmp_path / "out")
    assert done.exit_code == 1
    assert "house-1.yaml" in done.stderr
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == ["house-0", "house-2"]


def test_whatever_the_planner_trips_over_is_a_finding_of_that_survey(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from latchside.planning import make

    real = make.make_plan

    def tripping(known: Any, *rest: Any) -> Any:
        if known.id == "elm":
            raise ZeroDivisionError("float division by zero")
        return real(known, *rest)

    monkeypatch.setattr(make, "make_plan", tripping)
    files = [survey(tmp_path / "in", name) for name in ("elm", "oak")]
    result = run("plan", *files, "--out", tmp_path / "out")
    assert result.exit_code == 1
    assert "elm.yaml" in result.stderr
    assert "ZeroDivisionError" in result.stderr
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["oak"]


@pytest.mark.parametrize("command", [["plan", "SURVEY", "--out"], ["render", "--out"]])
@pytest.mark.parametrize("below", ["", "deep/er"])
def test_a_place_that_cannot_be_written_is_said_in_words(command: list[str], below: str, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine", "utf-8")
    arguments = [str(survey(tmp_path / "in", "elm")) if one == "SURVEY" else one for one in command]
    result = run(*arguments, tmp_path / "file" / "inside" / below)
    assert result.exit_code == 1
    assert "cannot be written" in result.output
    assert "--out" in result.output


def test_a_place_in_which_nothing_can_be_made_is_said_once_and_of_no_survey(tmp_path: Path) -> None:
    """The system lets nobody make a file there, whatever rights it shows."""
    files = [survey(tmp_path / "in", name) for name in ("elm", "oak")]
    result = run("plan", *files, "--out", "/proc/packs")
    assert result.exit_code == 1
    assert result.output.count("cannot be written") == 1
    assert ".yaml" not in result.output


@pytest.mark.parametrize("command", [["site"], ["pocket"], ["labels", "--address", "https://field.example/"]])
def test_every_command_looks_at_its_place_before_it_works(command: list[str]) -> None:
    result = run(*command, "--out", "/proc/made")
    assert result.exit_code == 1
    assert result.output.startswith("Error: /proc/made cannot be written")


def test_a_place_that_fills_up_ends_the_run_and_is_said_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = Path.write_bytes

    def full(path: Path, data: bytes) -> int:
        if ".part-1" in str(path):
            raise OSError(28, "No space left on device")
        return real(path, data)

    monkeypatch.setattr(Path, "write_bytes", full)
    files = [survey(tmp_path / "in", name) for name in ("elm", "oak", "yew")]
    result = run("plan", *files, "--out", tmp_path / "out")
    assert result.exit_code == 1
    assert result.stderr.count("No space left on device") == 1
    assert "oak.yaml" not in result.stderr
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["elm"]


def test_surveys_in_a_folder_below_are_not_passed_over_in_silence(tmp_path: Path) -> None:
    survey(tmp_path, "elm")
    survey(tmp_path / "north", "oak")
    result = run("plan", tmp_path, "--out", tmp_path / "packs" / "today")
    assert str(tmp_path / "north") in result.stderr
    assert "packs" not in result.stderr
    assert date.fromisoformat("2026-03-09").isoformat() in result.output
