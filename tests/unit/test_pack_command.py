"""`latchside plan`: one survey and many, shown and written; what is refused, and what is said of it."""

from __future__ import annotations

import csv
import hashlib
import io
import json
import os
import pty
import shutil
import signal
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from latchside import many
from latchside.cli import main
from latchside.cli.planned import lost
from latchside.messages import messages
from latchside.planning import summary
from latchside.root import ROOT

from .pack_plans import PLAN, hostile

DEMO = ROOT / "content" / "jobs" / "corner-bakery.yaml"
COMMAND = [sys.executable, "-m", "latchside.cli", "plan"]
SMALL = """\
id: {id}
name: {name}
surveyed: "2026-03-09"
site: {{region: europe, year_built: 1999, occupied: no, monitored: no, keyholder_arranged: yes}}
control_unit: {{wired_positions: 4, radio_positions: 4, frequency: 868.3, layout: series, end_of_line: 2200, chime: no}}
openings:
  - {{id: back-door, place: Kitchen, side: rear, kind: hinged-door}}
"""


def run(*arguments: str | Path) -> Result:
    result = CliRunner().invoke(main, ["plan", *(str(one) for one in arguments)])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def written(folder: Path, id_: str = "elm-house", name: str = "Elm House", text: str = SMALL) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{id_}.yaml"
    path.write_text(text.format(id=id_, name=name), "utf-8")
    return path


def contents(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


# -- one survey ------------------------------------------------------------------------------------------------


def test_a_summary_in_a_pipe() -> None:
    result = run(DEMO)
    assert "\x1b[" not in result.output
    assert "Corner bakery with a flat above (corner-bakery), planned for 2026-02-03: 11 openings" in result.output
    assert "wired-input-transmitter (chosen by the lead)" in result.output
    assert "question  " in result.output


def test_a_table_on_a_terminal(tmp_path: Path) -> None:
    main_end, other = pty.openpty()
    environment = {**os.environ, "TERM": "xterm", "COLUMNS": "100"}
    process = subprocess.Popen(
        [*COMMAND, str(written(tmp_path))], stdout=other, stderr=subprocess.PIPE, env=environment
    )
    os.close(other)
    shown = b""
    while True:
        try:
            piece = os.read(main_end, 65536)
        except OSError:
            break
        if not piece:
            break
        shown += piece
    process.communicate()
    os.close(main_end)
    assert "┃".encode() in shown
    assert b"question" in shown


def test_the_plan_as_json() -> None:
    data = json.loads(run(DEMO, "--json").stdout)
    assert (data["format"], data["version"], data["on"]) == ("latchside-plan", 1, "2026-02-03")
    assert len(data["openings"]) == 11


def test_a_pack_is_written(tmp_path: Path) -> None:
    out = tmp_path / "packs" / "bakery"
    result = run(DEMO, "--out", out)
    assert set(contents(out)) == {
        "index.html", "zones.csv", "parts.csv", "service.ics", "visit.json", "plan.json", "pack.zip",
    }  # fmt: skip
    assert f"open {out / 'index.html'}" in result.output


def test_the_visit_of_a_pack_passes_the_record_command(tmp_path: Path) -> None:
    run(DEMO, "--out", tmp_path / "out")
    result = CliRunner().invoke(main, ["record", str(tmp_path / "out" / "visit.json")])
    assert result.exit_code == 0, result.output
    assert "Corner bakery with a flat above, 2026-02-03" in result.output
    assert "looks as if" not in result.output


@pytest.mark.slow
def test_same_survey_and_date_same_bytes(tmp_path: Path) -> None:
    """Here, and in another process with another hash seed and in another time zone."""
    run(DEMO, "--out", tmp_path / "one")
    environment = {**os.environ, "PYTHONHASHSEED": "4711", "TZ": "Pacific/Auckland"}
    command = [*COMMAND, str(DEMO), "--out", str(tmp_path / "two")]
    subprocess.run(command, env=environment, capture_output=True, check=False)
    assert contents(tmp_path / "one") == contents(tmp_path / "two")
    assert contents(tmp_path / "one")


def test_another_date_moves_what_falls_due(tmp_path: Path) -> None:
    for name, day in (("one", "2026-02-03"), ("two", "2026-09-01")):
        run(DEMO, "--out", tmp_path / name, "--date", day)
    one, two = contents(tmp_path / "one"), contents(tmp_path / "two")
    assert one["service.ics"] != two["service.ics"]
    assert json.loads((tmp_path / "two" / "plan.json").read_text("utf-8"))["on"] == "2026-09-01"


def test_an_address_makes_the_document_link_into_the_site(tmp_path: Path) -> None:
    run(DEMO, "--out", tmp_path / "out", "--address", "https://field.example/library")
    assert "https&#58;//field.example/library/devices/" in (tmp_path / "out" / "index.html").read_text("utf-8")


def test_exit_codes(tmp_path: Path) -> None:
    """1 where a problem stands, though the pack is written."""
    data = json.loads(run(DEMO, "--json").stdout)
    assert run(DEMO).exit_code == (1 if data["problems"] else 0)
    bad = written(tmp_path, text=SMALL.replace("kind: hinged-door", "kind: trapdoor"))
    result = run(bad)
    assert result.exit_code == 1
    assert "trapdoor" in result.stderr


# -- what is refused -------------------------------------------------------------------------------------------


def test_a_full_folder_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "mine.txt").write_text("mine", "utf-8")
    result = run(DEMO, "--out", tmp_path)
    assert result.exit_code == 1
    assert "is not empty; nothing was written" in result.output
    assert [path.name for path in tmp_path.iterdir()] == ["mine.txt"]


def test_without_a_day_it_asks_for_one(tmp_path: Path) -> None:
    path = written(tmp_path, text=SMALL.replace('surveyed: "2026-03-09"\n', ""))
    result = run(path, "--out", tmp_path / "out")
    assert result.exit_code == 1
    assert "--date YYYY-MM-DD" in result.stderr
    assert not (tmp_path / "out").exists()
    assert "planned for 2026-04-01" in run(path, "--date", "2026-04-01").output


@pytest.mark.parametrize("day", ["9 March", "2026-02-30", "20260309", "2026-W10-1", ""])
def test_a_day_that_is_none(day: str) -> None:
    result = run(DEMO, "--date", day)
    assert result.exit_code == 1
    assert "is no day" in result.output


def test_a_file_that_is_not_there_and_a_folder_without_surveys(tmp_path: Path) -> None:
    assert "There is no file" in run(tmp_path / "none.yaml").output
    assert "holds no survey" in run(tmp_path).output


def test_a_pdf_needs_a_folder_and_weasyprint(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert "--pdf needs --out" in run(DEMO, "--pdf").output
    monkeypatch.setitem(sys.modules, "weasyprint", None)
    result = run(DEMO, "--pdf", "--out", tmp_path / "out")
    assert result.exit_code == 1
    assert messages("latchside.packs.pdf")("missing") in result.output
    assert not (tmp_path / "out").exists()


def test_a_pdf_goes_with_the_pack(tmp_path: Path) -> None:
    pytest.importorskip("weasyprint", exc_type=ImportError)
    path = written(tmp_path / "in")
    for name in ("one", "two"):
        run(path, "--pdf", "--out", tmp_path / name)
    made = contents(tmp_path / "one")
    assert "pack.pdf" in made
    assert made == contents(tmp_path / "two")


def test_no_pack_holds_a_code(tmp_path: Path) -> None:
    """Note and name: the plan is made, the pack says what was kept out of it, and the survey has it still."""
    told = SMALL.replace("kind: hinged-door}}", "kind: hinged-door, notes: The code is 4711, spoken: code 4812}}")
    path = written(tmp_path / "in", "elm-house", "Elm House code 4913", told)
    result = run(path, "--out", tmp_path / "out")
    for where in ("notes of back-door", "spoken of back-door", "name, which"):
        assert where in result.stderr
    assert len(list((tmp_path / "out").iterdir())) > 5
    for file in (tmp_path / "out").rglob("*"):
        assert not [code for code in (b"4711", b"4812", b"4913") if code in file.read_bytes()], file.name
    problems = json.loads((tmp_path / "out" / "plan.json").read_text("utf-8"))["problems"]
    assert sum("which looks as if it held a code" in one["found"] for one in problems) == 3
    assert "Kept out of the pack" in (tmp_path / "out" / "index.html").read_text("utf-8")
    assert "4711" in path.read_text("utf-8")


def test_what_is_confirmed_as_no_code_stands_in_the_pack(tmp_path: Path) -> None:
    told = SMALL.replace("kind: hinged-door}}", "kind: hinged-door, notes: Code 4711 of the plan, no_codes: [notes]}}")
    result = run(written(tmp_path / "in", text=told), "--out", tmp_path / "out")
    assert "held a code" not in result.output
    assert "Code 4711 of the plan" in (tmp_path / "out" / "index.html").read_text("utf-8")


# -- many ------------------------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Ten surveys: more than are done in one process, one of them broken, two of one id."""
    made = tmp_path_factory.mktemp("surveys")
    for number in range(8):
        written(made, f"house-{number}", f"House {'A' if number == 0 else number}")
    (made / "house-3.yaml").write_text("id: house-3\nname: [", "utf-8")
    written(made / "copy", "house-5", "House five again").rename(made / "zz-again.yaml")
    (made / "copy").rmdir()
    (made / "notes.txt").write_text("no survey", "utf-8")
    return made


@pytest.fixture(scope="module")
def all_of_them(folder: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Any]:
    """The packs of the folder, and how the command ended."""
    out = tmp_path_factory.mktemp("made") / "packs"
    command = [*COMMAND, str(folder), "--out", str(out)]
    return out, subprocess.run(command, capture_output=True, text=True, check=False)


@pytest.mark.slow
def test_a_folder_of_surveys_over_all_cores(all_of_them: tuple[Path, Any]) -> None:
    out, done = all_of_them
    made = sorted(path.name for path in out.iterdir())
    assert made == [f"house-{number}" for number in range(8) if number != 3], done.stderr
    assert all((out / name / "pack.zip").is_file() for name in made)
    assert done.returncode == 1
    assert "house-3.yaml" in done.stderr
    lines = [line for line in done.stdout.splitlines() if "planned for" in line]
    assert [line.partition("(")[2].partition(")")[0] for line in lines] == made


@pytest.mark.slow
def test_the_second_survey_of_one_id_is_refused(all_of_them: tuple[Path, Any]) -> None:
    out, done = all_of_them
    assert "zz-again.yaml" in done.stderr
    assert "another survey named house-5" in done.stderr
    assert "House five again" not in (out / "house-5" / "index.html").read_text("utf-8")


@pytest.mark.slow
def test_each_of_many_is_what_it_is_alone(all_of_them: tuple[Path, Any], folder: Path, tmp_path: Path) -> None:
    run(folder / "house-1.yaml", "--out", tmp_path / "alone")
    assert contents(tmp_path / "alone") == contents(all_of_them[0] / "house-1")


def test_many_as_json(folder: Path, tmp_path: Path) -> None:
    for name in ("house-3", "house-4", "house-5", "zz-again"):
        shutil.copy(folder / f"{name}.yaml", tmp_path)
    found = json.loads(run("--json", tmp_path).stdout)
    assert [one["survey"]["id"] for one in found] == ["house-4", "house-5", "house-5"]


def test_two_files_are_packs_side_by_side(tmp_path: Path) -> None:
    files = [written(tmp_path / "in", name, name.title()) for name in ("oak", "elm")]
    run(*files, "--out", tmp_path / "out")
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == ["elm", "oak"]


def double(number: int) -> int:
    return number * 2


def nothing() -> None:
    pass


def survives_once(piece: tuple[Path, int]) -> int:
    """Twice the number. The first time, the process that works 11 is killed; with 13 every process is."""
    folder, number = piece
    if number == 13 or (number == 11 and not (folder / "killed").exists()):
        (folder / "killed").touch()
        os.kill(os.getpid(), signal.SIGKILL)
    return 2 * number


def given_up(piece: tuple[Path, int]) -> int:
    return -piece[1]


@pytest.mark.slow
def test_a_killed_process_costs_only_what_kills_it_again(tmp_path: Path) -> None:
    pieces = [(tmp_path, number) for number in range(20)]
    done = list(many.each(pieces, survives_once, many.Cores(nothing, count=2), given_up))
    assert done == [2 * number if number != 13 else -13 for number in range(20)]


def test_a_survey_that_is_lost_twice_is_a_finding(tmp_path: Path) -> None:
    outcome = lost((3, tmp_path / "elm.yaml"))
    assert outcome.errors == 1
    assert "elm.yaml:1:1: error cannot-plan" in outcome.findings


@pytest.mark.parametrize("size", [0, 3, many.FEW, many.FEW + 1, 40])
def test_work_comes_back_in_order(size: int) -> None:
    done = many.each(list(range(size)), double, many.Cores(nothing), double)
    assert list(done) == [2 * number for number in range(size)]


# -- words -----------------------------------------------------------------------------------------------------


def test_texts_of_a_survey_obey_no_terminal() -> None:
    text = summary.as_text(hostile("a\x1b[31m\rb\u202ec"))
    assert not [sign for sign in text if not sign.isprintable() and sign != "\n"]


def test_columns_line_up() -> None:
    lines = summary.as_text(PLAN).splitlines()
    at = lines[2].index("Device")
    assert [line[at - 2 : at] for line in lines[3:6]] == ["  "] * 3
    assert lines[0].endswith("3 openings, 2 with a device, 1 problem, 2 questions")
    assert "problem   panel: 2 radio contacts, 1 radio position – Add a receiver." in lines


def test_the_zone_schedule_of_the_demo_reads_back(tmp_path: Path) -> None:
    run(DEMO, "--out", tmp_path / "out")
    text = (tmp_path / "out" / "zones.csv").read_bytes().decode("utf-8-sig")
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    data = json.loads((tmp_path / "out" / "plan.json").read_text("utf-8"))
    assert [row["name"] for row in rows] == [zone["spoken"] for zone in data["zones"]]
