"""The files of a pack, each read back by a general library; hostile texts stay texts; same plan, same bytes."""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
import zipfile
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from typing import Any
from uuid import UUID

import icalendar
import openpyxl
import pytest
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from referencing import Registry
from referencing.jsonschema import DRAFT202012

from latchside.archive import archive
from latchside.packs.calendar import service_ics
from latchside.packs.data import plan_data, plan_json
from latchside.packs.files import about, pack_files
from latchside.packs.ids import id_of
from latchside.packs.tables import ZONE_COLUMNS, parts_csv, zones_csv
from latchside.packs.visit import visit_json
from latchside.planning.plan import Plan, Service
from latchside.planning.zones import contact_names
from latchside.root import ROOT
from latchside.visits.file import parse_visit
from latchside.visits.state import view

from .pack_plans import ON, PLAN, hostile
from .support import schemas

VISIT_SCHEMA = ROOT / "schema" / "visit.schema.json"
FORMULAS = ("=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", " =1+1", "=HYPERLINK(1)")
HOSTILE = (*FORMULAS, "</script><img src=x>", 'a"b,c;d\\n', "BEGIN:VEVENT\r\nX:1", "\u202eabc", "é" * 200, "\x00\x07")
ANY_TEXT = st.text(st.characters(exclude_categories=()), min_size=1, max_size=120)


def table(text: str) -> list[list[str]]:
    assert text.startswith("\ufeff")
    return list(csv.reader(io.StringIO(text[1:], newline="")))


def validator() -> Any:
    registry: Any = Registry()
    for name, document in schemas().documents.items():
        registry = registry.with_resource(name, DRAFT202012.create_resource(document))
    return Draft202012Validator({"$ref": "plan.schema.json"}, registry=registry)


# -- tables ----------------------------------------------------------------------------------------------------


def test_the_zone_schedule_reads_back() -> None:
    head, *rows = table(zones_csv(PLAN))
    assert tuple(head) == ZONE_COLUMNS
    first = dict(zip(head, rows[0], strict=True))
    assert (first["position"], first["name"], first["response"]) == ("W1", "Shop street door", "delayed")
    assert [row[0] for row in rows] == [zone.position for zone in PLAN.zones]
    assert "\r\n" in zones_csv(PLAN)


def test_the_parts_list_reads_back_with_the_sum_of_need_and_spare() -> None:
    head, *rows = table(parts_csv(PLAN))
    assert head == ["sort", "name", "quantity", "spare", "in all", "unit", "used for"]
    assert rows[1][:6] == ["consumable", "Cable, four conductors", "12.5", "2", "14.5", "m"]


@pytest.mark.parametrize("text", HOSTILE)
def test_a_cell_that_a_spreadsheet_would_run_comes_out_as_text(text: str) -> None:
    """Read back with csv, and put into a workbook that a spreadsheet opens: no cell is a formula."""
    plan = hostile(text)
    sheet = openpyxl.Workbook().active
    assert sheet is not None
    for written in (zones_csv(plan), parts_csv(plan)):
        for row in table(written):
            for value in row:
                assert not value.lstrip().startswith(("=", "+", "-", "@"))
                assert not value.startswith(("\t", "\r"))
                cell = sheet.cell(1, 1, value.replace("\x07", ""))
                assert cell.data_type != "f", value
    head, *rows = table(zones_csv(plan))
    shown = dict(zip(head, rows[0], strict=True))["name"]
    assert shown.removeprefix("'") == text.replace("\x00", "\ufffd")


@given(ANY_TEXT)
def test_any_text_keeps_the_shape_of_the_table(text: str) -> None:
    plan = hostile(text)
    for written, columns in ((zones_csv(plan), len(ZONE_COLUMNS)), (parts_csv(plan), 7)):
        assert {len(row) for row in table(written)} == {columns}


# -- calendar --------------------------------------------------------------------------------------------------


def events(text: str) -> list[Any]:
    calendar = icalendar.Calendar.from_ical(text)
    return list(calendar.walk("VEVENT"))


def test_the_service_plan_is_a_calendar_of_whole_days() -> None:
    text = service_ics(PLAN)
    first, second = events(text)
    assert first.decoded("dtstart") == date(2027, 3, 9)
    assert first.decoded("dtend") == date(2027, 3, 10)
    assert str(first["summary"]) == "Yearly service"
    assert str(second["description"]) == "Elm Corner: Bedroom rear sash window"
    assert first.decoded("dtstamp").isoformat() == "2026-03-09T00:00:00+00:00"
    assert UUID(first["uid"]).version == 5
    assert len({str(one["uid"]) for one in (first, second)}) == 2
    assert "VALUE=DATE" in text
    assert all(not one.errors for one in (first, second))


def test_an_event_keeps_its_id_when_its_date_moves() -> None:
    later = replace(PLAN, service=tuple(replace(one, due=one.due + timedelta(days=30)) for one in PLAN.service))
    before, after = (events(service_ics(plan)) for plan in (PLAN, later))
    assert [one["uid"] for one in before] == [one["uid"] for one in after]
    assert before[0].decoded("dtstart") != after[0].decoded("dtstart")


def test_lines_are_folded_at_75_octets_and_end_in_crlf() -> None:
    plan = replace(PLAN, service=(Service(ON, "site", "Ünïcode, with; signs\\ and\na second line " * 9),))
    text = service_ics(plan)
    assert "\n" not in text.replace("\r\n", "")
    assert all(len(line.encode("utf-8")) <= 75 for line in text.split("\r\n"))
    assert str(events(text)[0]["summary"]) == "Ünïcode, with; signs\\ and\na second line " * 9


@given(ANY_TEXT)
def test_any_text_comes_back_from_the_calendar_and_adds_no_line(text: str) -> None:
    found = events(service_ics(hostile(text)).encode("utf-8", "replace").decode("utf-8"))
    assert len(found) == 2
    for one in found:
        assert set(one) == {"UID", "DTSTAMP", "DTSTART", "DTEND", "SUMMARY", "DESCRIPTION", "TRANSP"}


def test_nothing_due_is_no_calendar() -> None:
    assert service_ics(replace(PLAN, service=())) == ""
    assert "service.ics" not in pack_files(replace(PLAN, service=()))


# -- the plan as data ------------------------------------------------------------------------------------------


def test_the_whole_plan_fits_its_schema() -> None:
    data = json.loads(plan_json(PLAN))
    assert [error.message for error in validator().iter_errors(data)] == []
    assert data["survey"]["openings"][0]["walls"][0] == {"material": "brick", "thickness_mm": 100}
    assert data["on"] == "2026-03-09"
    assert data["openings"][1]["choice"]["overridden"]


def test_the_schema_refuses_what_is_no_plan() -> None:
    data = plan_data(PLAN)
    for broken in ({**data, "more": 1}, {**data, "on": "9 March"}, {**data, "zones": [{}]}):
        assert list(validator().iter_errors(broken))
    data.pop("library")
    assert list(validator().iter_errors(data))


@given(ANY_TEXT)
def test_any_text_of_a_survey_keeps_the_data_sound(text: str) -> None:
    data = json.loads(plan_json(hostile(text)).encode("utf-8"))
    assert not list(validator().iter_errors(data))


def test_figures_without_an_end_are_no_figures_in_json() -> None:
    opening = PLAN.openings[0]
    line = replace(opening.figures[0], inputs={"gap": float("inf"), "many": (1.5, float("nan"))})
    plan = replace(PLAN, openings=(replace(opening, figures=(line,)), *PLAN.openings[1:]))
    assert plan_data(plan)["openings"][0]["figures"][0]["inputs"] == {"gap": None, "many": [1.5, None]}


# -- the visit -------------------------------------------------------------------------------------------------


def test_the_visit_names_the_site_and_every_opening_with_its_device() -> None:
    found, faults = parse_visit(visit_json(PLAN), VISIT_SCHEMA)
    assert not faults
    assert found is not None
    seen = view(found.entries)
    assert seen.visit is not None
    assert (seen.visit["site"], seen.visit["date"]) == ("Elm Corner", "2026-03-09")
    assert [(one["name"], one["device"]) for one in seen.openings.values()] == [
        ("Shop street door", "recessed-contact"),
        ("Bedroom rear sash window", "surface-contact"),
        ("Bedroom rear sash window upper sash", "surface-contact"),  # each contact is read and proved by itself
        ("Cellar hatch", None),
    ]


def test_the_visit_holds_what_is_planned_for_each_reading() -> None:
    openings = json.loads(visit_json(PLAN))["entries"][1:]
    assert openings[0]["expected"]["loop-shut"] == {
        "words": "2.2 kΩ ±5 %",
        "unit": "kΩ",
        "ranges": [{"low": 2.09, "high": 2.31}],
    }
    assert openings[0]["expected"]["loop-open"]["ranges"] == [{"low": 1}]
    assert openings[1]["expected"] == openings[2]["expected"]
    assert "expected" not in openings[3]


def test_the_visit_says_which_job_it_is_of_and_what_falls_due_after_it() -> None:
    site, *openings = json.loads(visit_json(PLAN))["entries"]
    assert site["job"] == {"id": PLAN.survey.id, "calendar": service_ics(PLAN)}
    assert [one["job"]["opening"] for one in openings] == [
        one.opening.id for one in PLAN.openings for _ in contact_names(one)
    ]
    positions = {zone.position for zone in PLAN.zones}
    assert {one["job"]["zone"] for one in openings if "zone" in one["job"]} == positions
    assert not [one for one in openings if not one["device"] and "zone" in one["job"]]


def test_every_id_of_a_visit_is_its_own_and_the_same_each_time() -> None:
    first, again = json.loads(visit_json(PLAN)), json.loads(visit_json(PLAN))
    assert first == again
    ids = [first["visit"], *(one["id"] for one in first["entries"]), *(one["opening"] for one in first["entries"][1:])]
    assert len(set(ids)) == len(ids)
    assert {UUID(one).version for one in ids} == {5}


def test_a_plan_with_other_content_is_another_visit() -> None:
    """So that a corrected pack can be brought in beside the first, and no entry reads otherwise in two files."""
    other = replace(PLAN, openings=(replace(PLAN.openings[0], spoken="Shop front door"), *PLAN.openings[1:]))
    entries = [{one["id"] for one in json.loads(visit_json(plan))["entries"]} for plan in (PLAN, other)]
    assert not entries[0] & entries[1]


@given(ANY_TEXT)
def test_any_text_of_a_survey_gives_a_sound_visit(text: str) -> None:
    found, faults = parse_visit(visit_json(hostile(text)), VISIT_SCHEMA)
    assert not faults
    assert found is not None


def test_ids_do_not_run_into_each_other() -> None:
    assert id_of("a", "b") != id_of("ab")
    assert id_of("a", "b") == id_of("a", "b")


# -- all together ----------------------------------------------------------------------------------------------


def test_every_file_is_told_about() -> None:
    assert all(map(about, pack_files(PLAN)))


def test_the_archive_is_the_same_bytes_each_time_and_of_one_date() -> None:
    files = {name: text.encode("utf-8") for name, text in pack_files(PLAN).items()}
    first = archive(files, "elm-corner")
    assert first == archive(dict(reversed(files.items())), "elm-corner")
    with zipfile.ZipFile(io.BytesIO(first)) as made:
        assert made.testzip() is None
        assert made.namelist() == sorted(f"elm-corner/{name}" for name in files)
        assert {entry.date_time for entry in made.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert made.read("elm-corner/plan.json") == files["plan.json"]


SAME = """
import hashlib, sys
sys.path.insert(0, sys.argv[1])
from tests.unit.pack_plans import PLAN
from latchside.packs.files import pack_files
print(hashlib.sha256(repr(sorted(pack_files(PLAN).items())).encode()).hexdigest())
"""


def test_same_plan_same_bytes_in_any_process(tmp_path: Path) -> None:
    def told(seed: str, zone: str) -> str:
        environment = {"PYTHONHASHSEED": seed, "TZ": zone, "PATH": "", "PYTHONPATH": str(ROOT / "scripts")}
        command = [sys.executable, "-c", SAME, str(ROOT)]
        return subprocess.run(command, env=environment, cwd=tmp_path, capture_output=True, text=True, check=True).stdout

    assert told("1", "UTC") == told("4711", "Pacific/Auckland")


def test_plans_without_an_opening_for_any_device_still_make_a_pack() -> None:
    bare: Plan = replace(PLAN, openings=(PLAN.openings[2],), zones=(), items=(), work=(), service=(), cautions=())
    files = pack_files(bare)
    assert table(files["zones.csv"]) == [list(ZONE_COLUMNS)]
    assert parse_visit(files["visit.json"], VISIT_SCHEMA)[1] == ()
