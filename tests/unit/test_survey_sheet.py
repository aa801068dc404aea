"""Surveys in sheets: CSV as spreadsheets write it, XLSX as people fill it in, and workbooks that mean harm."""

from __future__ import annotations

import io
import sys
import warnings
import zipfile
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook, load_workbook

from latchside.surveys.cells import guarded, unguarded
from latchside.surveys.sheet import letter, name_openings
from latchside.surveys.survey import Survey
from latchside.surveys.template import csv_bytes

from .surveys import DATA, codes, places, put, read, written

CSV = """id,boat-shed,
name,Boat shed,ignored
site.region,Europe,
,,
id,place,kind,gap,walls,drill,floors
shed-door,Shed,Hinged door,4 mm,brick 100 mm; foil,YES,1
loft-hatch,Loft,hatch,,none,,
"""


def opened(survey: Survey | None) -> Survey:
    assert survey
    return survey


def cells(*lines: list[object], title: str = "Survey") -> bytes:
    """A workbook with these rows."""
    book = Workbook()
    sheet: Any = book.active
    sheet.title = title
    for line in lines:
        sheet.append(line)
    return saved(book)


def saved(book: Workbook) -> bytes:
    made = io.BytesIO()
    book.save(made)
    return made.getvalue()


def repacked(content: bytes, change: Callable[[dict[str, bytes]], None]) -> bytes:
    """A workbook with its parts changed."""
    with zipfile.ZipFile(io.BytesIO(content)) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    change(parts)
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in parts.items():
            archive.writestr(name, data)
    return made.getvalue()


HEAD: list[list[object]] = [["id", "boat-shed"], ["name", "Boat shed"], []]
COLUMNS: list[object] = ["id", "place", "kind", "gap"]
GOOD: list[object] = ["shed-door", "Shed", "hatch", "4 mm"]


# -- CSV -------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("sign", [",", ";", "\t"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16"])
@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_separators_encodings_and_line_ends_are_found_out(sign: str, encoding: str, end: str, tmp_path: Path) -> None:
    text = CSV.replace("; ", "\x00").replace(",", sign).replace("\x00", "; " if sign != ";" else "\x01")
    text = text.replace("brick 100 mm\x01foil", '"brick 100 mm; foil"').replace("\n", end)
    survey, findings = read(put(tmp_path, "a.csv", text.encode(encoding)))
    assert findings == ()
    door, hatch = opened(survey).openings
    assert (door.kind, door.gap_mm, door.drill, door.floors) == ("hinged-door", 4, True, 1)
    assert [wall.material for wall in door.walls or ()] == ["brick", "foil"]
    assert (hatch.gap_mm, hatch.walls, hatch.drill) == (None, (), None)
    assert opened(survey).site.region == "europe"


def test_a_line_that_names_the_separator_and_a_decimal_comma(tmp_path: Path) -> None:
    text = "sep=;\ncontrol_unit.frequency;868,3\nid;place;kind;gap\na;Shed;gate;2,5 mm\n"
    survey, findings = read(put(tmp_path, "a.csv", text))
    assert codes(findings) == ["missing-key", "missing-key"]
    assert opened(survey).control_unit.frequency_mhz == 868.3
    assert opened(survey).openings[0].gap_mm == 2.5


def test_findings_say_row_and_column_and_good_rows_are_kept(tmp_path: Path) -> None:
    text = CSV.replace("Hinged door", "hinged dor").replace("loft-hatch,Loft,hatch,,", "loft-hatch,Loft,hatch,wide,")
    text += "gate,Yard,gate,,,,\n,,,,,,\n"
    survey, findings = read(put(tmp_path, "a.csv", text))
    assert [one.id for one in opened(survey).openings] == ["gate"]
    assert places(findings) == [("unknown-word", 6, 3), ("not-a-length", 7, 4)]
    assert "kind, column C" in findings[0].found
    assert 'Did you mean "hinged-door"?' in findings[0].expected
    assert "left out of the plan" in findings[0].action
    assert "gap, column D" in findings[1].found


def test_columns_that_are_not_known(tmp_path: Path) -> None:
    text = "id,a\nname,Ab\nid,place,kind,gapp,place,\nx,Shed,gate,4 mm,Loft,more\ny,Shed,hatch,,,,\n"
    survey, findings = read(put(tmp_path, "a.csv", text))
    assert places(findings) == [("unknown-column", 3, 4), ("repeated-column", 3, 5), ("unnamed-column", 4, 6)]
    assert 'Did you mean "gap"?' in findings[0].expected
    assert [one.id for one in opened(survey).openings] == ["x", "y"]


def test_fields_above_that_are_not_known(tmp_path: Path) -> None:
    text = CSV.replace("site.region,", "site.regin,").replace("name,", "name,One,\nname,")
    survey, findings = read(put(tmp_path, "a.csv", text))
    assert places(findings) == [("repeated-field", 3, 1), ("unknown-field", 4, 1)]
    assert 'Did you mean "site.region"?' in findings[1].expected
    assert len(opened(survey).openings) == 2


def test_many_openings_of_one_name_take_no_longer_each(tmp_path: Path) -> None:
    """The lines of Python that are run for 200 and for 800: four times as many, and not sixteen or sixty-four."""

    def lines_run(size: int) -> int:
        count = 0

        def traced(frame: Any, event: str, argument: object) -> Any:
            nonlocal count
            count += event == "line"
            return traced

        openings: list[dict[str, Any]] = [{"place": "Hall", "kind": "gate"} for _ in range(size)]
        before = sys.gettrace()
        sys.settrace(traced)
        try:
            name_openings(openings, openings)
        finally:
            sys.settrace(before)
        assert [one["id"] for one in openings[:3]] == ["hall-gate", "hall-gate-2", "hall-gate-3"]
        assert len({one["id"] for one in openings}) == size
        return count

    assert lines_run(800) < 5 * lines_run(200)


def test_a_name_that_a_later_row_has_as_its_id_is_not_given_twice(tmp_path: Path) -> None:
    text = "id,a\nname,Ab\nid,place,kind\n,Hall,gate\n,Hall,gate\nhall-gate-2,Hall,gate\n,Hall,gate\n"
    survey, findings = read(put(tmp_path, "a.csv", text))
    assert [one.id for one in opened(survey).openings] == ["hall-gate", "hall-gate-3", "hall-gate-2", "hall-gate-4"]
    assert findings == ()


def test_missing_cells_and_rows_without_an_id(tmp_path: Path) -> None:
    text = "id,a\nname,Ab\nid,place,kind\n,Hall,gate\n,Hall,gate\nx,,gate\n,,gate\n"
    survey, findings = read(put(tmp_path, "a.csv", text))
    assert [one.id for one in opened(survey).openings] == ["hall-gate", "hall-gate-2"]
    assert places(findings) == [("missing-key", 6, 1), ("missing-key", 7, 1)]
    assert "row 6" in findings[0].found


def test_a_sheet_without_a_column_of_ids_is_read_and_what_it_needs_is_shown_as_a_line(tmp_path: Path) -> None:
    """The line that each finding says to add is one that is read, and nothing is found any more."""
    text = "place,kind,gap\nHall,gate,4 mm\n"
    survey, findings = read(put(tmp_path, "b.csv", text))
    assert [one.id for one in opened(survey).openings] == ["hall-gate"]
    assert codes(findings) == ["missing-key", "missing-key"]
    lines = [one.action.removeprefix("Add at the top: ").partition(" –")[0] for one in findings]
    assert lines == ["id,b", "name,Corner shop"]
    again, findings = read(put(tmp_path, "c.csv", "\n".join([*lines, text])))
    assert findings == ()
    assert (opened(again).id, opened(again).name) == ("b", "Corner shop")


@pytest.mark.parametrize(
    ("text", "found"),
    [("kind,gap\ngate,4 mm\n", "without place"), ("name,Ab\n\nplace,gap\nHall,4 mm\n", "without kind"),
     ("room,type,gap\nHall,gate,4 mm\n", "no row of column names")],
)  # fmt: skip
def test_a_table_without_a_column_it_needs_is_said_once_with_the_rows_to_write(
    text: str, found: str, tmp_path: Path
) -> None:
    survey, findings = read(put(tmp_path, "a.csv", text))
    assert survey is None
    said = [one for one in findings if one.code != "missing-key"]
    assert codes(tuple(said)) == ["no-header"]
    assert found in said[0].found
    names, row = said[0].action.removeprefix("Name the columns so, place first: ").split(" – and write below: ")
    survey, findings = read(put(tmp_path, "b.csv", f"id,b\nname,Bb\n{names}\n{row}\n"))
    assert (findings, len(opened(survey).openings)) == ((), 1)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("name,A shed\nshed-door,Shed,hatch\n", "no-header"),
        ("just words\n", "no-header"),
        ("id,place,kind\n", "no-opening"),
        ("id,place,kind\n# a,Shed,hatch\n", "no-opening"),
        ('id,place,kind\n"a,Shed,hatch\n', "broken-csv"),
        ("id,place,kind\n" + "a,b,gate\n" * 5001, "sheet-too-large"),
        ("id,place,kind" + "," * 200 + "x\n", "stray-cell"),
        ("id,place,kind\n" + "a,b,gate\n" * 2001, "too-many-openings"),
        ("id,place,kind\na,\x00,gate\n", "not-utf-8"),
        ("id,place,kind\na," + "x" * 200_000 + ",gate\n", "broken-csv"),
    ],
)
def test_a_sheet_without_openings(text: str, code: str, tmp_path: Path) -> None:
    survey, findings = read(put(tmp_path, "a.csv", text))
    assert survey is None
    assert code in codes(findings)


def test_rows_above_a_broken_one_are_kept(tmp_path: Path) -> None:
    survey, findings = read(put(tmp_path, "a.csv", CSV + 'x,"Hall"s,gate,,,,\n'))
    assert len(opened(survey).openings) == 2
    assert places(findings) == [("broken-csv", 8, 1)]


@pytest.mark.parametrize(
    ("typed", "read_as"),
    [("yes", True), ("NO", False), ("TRUE", True), ("false", False), ("Unknown", None), ("", None)],
)  # fmt: skip
def test_answers(typed: str, read_as: bool | None, tmp_path: Path) -> None:
    survey, findings = read(put(tmp_path, "a.csv", CSV.replace(",YES,", f",{typed},")))
    assert (opened(survey).openings[0].drill, findings) == (read_as, ())


@pytest.mark.parametrize("typed", ["ja", "y", "1", "maybe"])
def test_other_answers_are_refused(typed: str, tmp_path: Path) -> None:
    assert codes(read(put(tmp_path, "a.csv", CSV.replace(",YES,", f",{typed},")))[1]) == ["unknown-word"]


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@a", "\tx", "'=1", "''=1", "it's", "'quoted'", ""])
def test_an_apostrophe_guards_what_a_spreadsheet_would_run(text: str) -> None:
    assert unguarded(guarded(text)) == text
    assert not guarded(text).startswith(("=", "+", "-", "@", "\t", "\r"))


def test_letters() -> None:
    assert [letter(n) for n in (1, 26, 27, 52, 53, 702, 703)] == ["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]


# -- XLSX ------------------------------------------------------------------------------------------------------


def test_numbers_days_and_ticks_of_a_workbook(tmp_path: Path) -> None:
    content = cells(
        ["id", "boat-shed"], ["name", 1934], ["surveyed", datetime(2026, 1, 12)], ["invented", True],
        ["control_unit.frequency", "868,3"], ["site.year_built", 1934.0], [],
        ["id", "place", "kind", "gap", "floors", "drill", "notes"], ["shed-door", 12, "hatch", 4.5, "2", False, "'=x"],
        [None, None, None], ["loft", "Loft", "gate", " ", None, None],
    )  # fmt: skip
    survey, findings = read(put(tmp_path, "a.xlsx", content))
    assert findings == ()
    made = opened(survey)
    assert (made.name, str(made.surveyed), made.invented) == ("1934", "2026-01-12", True)
    assert (made.control_unit.frequency_mhz, made.site.year_built) == (868.3, 1934)
    door, loft = made.openings
    assert (door.place, door.gap_mm, door.floors, door.drill, door.notes) == ("12", 4.5, 2, False, "=x")
    assert (loft.id, loft.gap_mm) == ("loft", None)


def test_a_day_where_a_fraction_was_typed(tmp_path: Path) -> None:
    bad: list[object] = ["x", "Shed", "gate", datetime(2026, 3, 16)]
    survey, findings = read(put(tmp_path, "a.xlsx", cells(*HEAD, COLUMNS, GOOD, bad)))
    assert [one.id for one in opened(survey).openings] == ["shed-door"]
    assert places(findings) == [("date-cell", 6, 4)]
    assert "2026-03-16" in findings[0].found
    assert "3/16" in findings[0].action


def test_a_percentage(tmp_path: Path) -> None:
    book = load_workbook(io.BytesIO(cells(*HEAD[:2], ["rules.spare_percent", 0.1], COLUMNS, GOOD)))
    sheet: Any = book.active
    sheet["B3"].number_format = "0%"
    survey, findings = read(put(tmp_path, "a.xlsx", saved(book)))
    assert (opened(survey).rules.spare_percent, findings) == (10, ())


def test_a_formula_is_never_worked_out(tmp_path: Path) -> None:
    bad: list[object] = ["x", "=1+1", "gate", None]
    survey, findings = read(put(tmp_path, "a.xlsx", cells(*HEAD, COLUMNS, GOOD, bad)))
    assert [one.id for one in opened(survey).openings] == ["shed-door"]
    assert places(findings) == [("formula", 6, 2)]


def test_the_saved_result_of_a_formula_is_read(tmp_path: Path) -> None:
    def worked(parts: dict[str, bytes]) -> None:
        name = "xl/worksheets/sheet1.xml"
        assert b"<v></v>" in parts[name] or b"<v />" in parts[name] or b"<v/>" in parts[name]
        for blank in (b"<v></v>", b"<v />", b"<v/>"):
            parts[name] = parts[name].replace(blank, b"<v>6.5</v>")

    content = repacked(cells(*HEAD, COLUMNS, ["x", "Shed", "gate", "=13/2"]), worked)
    survey, findings = read(put(tmp_path, "a.xlsx", content))
    assert (opened(survey).openings[0].gap_mm, findings) == (6.5, ())


def test_a_fault_in_a_cell(tmp_path: Path) -> None:
    def broken(parts: dict[str, bytes]) -> None:
        name = "xl/worksheets/sheet1.xml"
        parts[name] = parts[name].replace(b'r="D5" t="n"><v>7</v>', b'r="D5" t="e"><v>#N/A</v>')

    survey, findings = read(put(tmp_path, "a.xlsx", repacked(cells(*HEAD, COLUMNS, ["x", "A", "gate", 7]), broken)))
    assert survey is None
    assert codes(findings) == ["fault-in-cell"]


def test_the_sheet_named_survey_or_the_first_with_column_names(tmp_path: Path) -> None:
    book = Workbook()
    first: Any = book.active
    first.append(["Some notes"])
    other = book.create_sheet("Openings")
    for line in (*HEAD, COLUMNS, GOOD):
        other.append(line)
    assert len(opened(read(put(tmp_path, "a.xlsx", saved(book)))[0]).openings) == 1
    named = book.create_sheet("survey")
    for line in (*HEAD, COLUMNS, GOOD, ["b", *GOOD[1:]]):
        named.append(line)
    assert len(opened(read(put(tmp_path, "a.xlsx", saved(book)))[0]).openings) == 2


def test_a_wrong_size_in_the_file_hides_no_row(tmp_path: Path) -> None:
    def shrunk(parts: dict[str, bytes]) -> None:
        name = "xl/worksheets/sheet1.xml"
        parts[name] = parts[name].replace(b'<dimension ref="A1:D5"', b'<dimension ref="A1:B4"')

    survey, findings = read(put(tmp_path, "a.xlsx", repacked(cells(*HEAD, COLUMNS, GOOD), shrunk)))
    assert (len(opened(survey).openings), findings) == (1, ())


def test_links_that_a_spreadsheet_makes_of_an_address_are_no_harm(tmp_path: Path) -> None:
    book = load_workbook(io.BytesIO(cells(*HEAD, COLUMNS, GOOD)))
    sheet: Any = book.active
    sheet["B5"].hyperlink = "mailto:someone@example.org"
    assert codes(read(put(tmp_path, "a.xlsx", saved(book)))[1]) == []


# -- workbooks that mean harm ----------------------------------------------------------------------------------

WORKBOOK = written(DATA, "xlsx")
SHEET = "xl/worksheets/sheet1.xml"
ENTITY = b'<!DOCTYPE a [<!ENTITY b "ha"><!ENTITY c "&b;&b;">]>'


def adding(name: str, data: bytes = b"x") -> Callable[[dict[str, bytes]], None]:
    return lambda parts: parts.update({name: data})


def replacing(name: str, old: bytes, new: bytes) -> Callable[[dict[str, bytes]], None]:
    def change(parts: dict[str, bytes]) -> None:
        assert old in parts[name]
        parts[name] = parts[name].replace(old, new, 1)

    return change


RELS = "xl/_rels/workbook.xml.rels"
OUT = b'<Relationship Id="r9" Type="t/externalLinkPath" Target="file:///etc/passwd" TargetMode="External"/>'


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (adding("xl/vbaProject.bin"), "active-xlsx"),
        (adding("xl/externalLinks/externalLink1.xml", b"<a/>"), "active-xlsx"),
        (adding("xl/embeddings/oleObject1.bin"), "active-xlsx"),
        (adding("xl/activeX/activeX1.xml", b"<a/>"), "active-xlsx"),
        (adding("xl/connections.xml", b"<a/>"), "active-xlsx"),
        (adding("../evil.xml", b"<a/>"), "hostile-xlsx"),
        (adding("/etc/evil.xml", b"<a/>"), "hostile-xlsx"),
        (adding("xl\\evil.xml", b"<a/>"), "hostile-xlsx"),
        (adding("c:evil.xml", b"<a/>"), "hostile-xlsx"),
        (adding("XL/workbook.xml", b"<a/>"), "hostile-xlsx"),
        (replacing(SHEET, b"<worksheet", ENTITY + b"<worksheet"), "hostile-xlsx"),
        (replacing("docProps/core.xml", b"<cp:core", ENTITY + b"<cp:core"), "hostile-xlsx"),
        (adding(SHEET, '<?xml version="1.0" encoding="UTF-16"?><a/>'.encode("utf-16")), "hostile-xlsx"),
        (replacing(RELS, b"</Relationships>", OUT + b"</Relationships>"), "active-xlsx"),
        (
            replacing("[Content_Types].xml", b"spreadsheetml.sheet.main+xml", b"sheet.macroEnabled.main+xml"),
            "active-xlsx",
        ),
        (adding("xl/big.xml", b" " * 2_000_000), "xlsx-too-large"),
        (lambda parts: parts.pop("[Content_Types].xml"), "broken-xlsx"),
        (lambda parts: parts.pop("xl/workbook.xml"), "broken-xlsx"),
        (replacing(SHEET, b"<sheetData>", b"<sheetData"), "broken-xlsx"),
        (lambda parts: parts.update({f"xl/a{n}.xml": b"<a/>" for n in range(501)}), "xlsx-too-large"),
    ],
)  # fmt: skip
def test_refused_with_one_finding(change: Callable[[dict[str, bytes]], None], code: str, tmp_path: Path) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        survey, findings = read(put(tmp_path, "a.xlsx", repacked(WORKBOOK, change)))
    assert survey is None
    assert codes(findings) == [code]


@pytest.mark.parametrize(
    ("content", "code"),
    [
        (b"no archive", "broken-xlsx"), (b"PK\x03\x04 and no more", "broken-xlsx"), (WORKBOOK[:-100], "broken-xlsx"),
        (b"\xd0\xcf\x11\xe0" + b"\x00" * 600, "locked-xlsx"), (b"PK" + b"\x00" * 5_000_001, "file-too-large"),
    ],
)  # fmt: skip
def test_no_workbook(content: bytes, code: str, tmp_path: Path) -> None:
    survey, findings = read(put(tmp_path, "a.xlsx", content))
    assert (survey, codes(findings)) == (None, [code])


def test_a_locked_archive(tmp_path: Path) -> None:
    content = bytearray(WORKBOOK)
    for mark, offset in ((b"PK\x01\x02", 8), (b"PK\x03\x04", 6)):
        at = -1
        while (at := content.find(mark, at + 1)) >= 0:
            content[at + offset] |= 1
    assert codes(read(put(tmp_path, "a.xlsx", bytes(content)))[1]) == ["locked-xlsx"]


def test_a_bomb_is_refused_before_it_is_unpacked(tmp_path: Path) -> None:
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as archive:
        archive.writestr("[Content_Types].xml", b"x")
        with archive.open("xl/sharedStrings.xml", "w", force_zip64=True) as part:
            for _ in range(200):
                part.write(b" " * 1_000_000)
    assert codes(read(put(tmp_path, "a.xlsx", made.getvalue()))[1]) == ["xlsx-too-large"]


def test_too_many_rows(tmp_path: Path) -> None:
    lines = [*HEAD, COLUMNS, *([f"a-{n}", *GOOD[1:]] for n in range(5001))]
    (finding,) = read(put(tmp_path, "a.xlsx", cells(*lines)))[1]
    assert (finding.code, finding.action) == ("sheet-too-large", "Split the survey.")


@pytest.mark.parametrize("form", ["csv", "xlsx"])
def test_a_cell_far_to_the_right_is_named_and_the_survey_is_read(form: str, tmp_path: Path) -> None:
    lines: list[list[object]] = [*HEAD, COLUMNS, GOOD, ["gate", "Yard", "gate", *[None] * 500, "x"]]
    content = cells(*lines) if form == "xlsx" else csv_bytes(lines)  # type: ignore[arg-type]
    survey, findings = read(put(tmp_path, f"a.{form}", content))
    assert [one.id for one in opened(survey).openings] == ["shed-door", "gate"]
    assert [(one.code, one.place.line, one.place.column) for one in findings] == [("stray-cell", 6, 504)]
    assert "cell SJ6" in findings[0].found
    assert "Clear that cell" in findings[0].action


def test_a_cell_far_below_is_named_and_the_survey_is_read(tmp_path: Path) -> None:
    far = replacing(SHEET, b"</sheetData>", b'<row r="30000"><c r="B30000" t="n"><v>1</v></c></row></sheetData>')
    survey, findings = read(put(tmp_path, "a.xlsx", repacked(WORKBOOK, far)))
    assert survey is not None
    assert [one.place.line for one in findings] == [30000]


@pytest.mark.parametrize("form", ["csv", "xlsx"])
def test_columns_may_stand_in_any_order_and_without_an_id(form: str, tmp_path: Path) -> None:
    lines: list[list[object]] = [*HEAD, ["kind", "gap", "place"], ["hatch", "4 mm", "Loft"], ["gate", None, "Yard"]]
    content = cells(*lines) if form == "xlsx" else csv_bytes(lines)  # type: ignore[arg-type]
    survey, findings = read(put(tmp_path, f"a.{form}", content))
    assert [(one.id, one.gap_mm) for one in opened(survey).openings] == [("loft-hatch", 4), ("yard-gate", None)]
    assert findings == ()


def test_columns_without_a_name_are_not_called_repeated(tmp_path: Path) -> None:
    survey, findings = read(put(tmp_path, "a.csv", "id,a\nname,Ab\nid,,place,,kind\nx,,Loft,,hatch\n"))
    assert (len(opened(survey).openings), findings) == (1, ())


def test_a_row_far_away_does_not_hold_the_reader(tmp_path: Path) -> None:
    far = replacing(SHEET, b"</sheetData>", b'<row r="99999999999"><c r="A1" t="n"><v>1</v></c></row></sheetData>')
    assert codes(read(put(tmp_path, "a.xlsx", repacked(WORKBOOK, far)))[1]) == ["sheet-too-large"]


def test_blank_rows_with_a_format_are_no_openings(tmp_path: Path) -> None:
    book = load_workbook(io.BytesIO(cells(*HEAD, COLUMNS, GOOD)))
    sheet: Any = book.active
    for line in range(6, 8000):
        sheet.cell(line, 4).number_format = "@"
    survey, findings = read(put(tmp_path, "a.xlsx", saved(book)))
    assert (len(opened(survey).openings), findings) == (1, ())


def test_the_file_is_closed(tmp_path: Path) -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("error", ResourceWarning)
        path = put(tmp_path, "a.xlsx", WORKBOOK)
        assert read(path)[0]
        path.unlink()
