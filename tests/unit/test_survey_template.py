"""The survey to fill in: every field stands in it, it is read back, and it is the same every time."""

from __future__ import annotations

import csv
import io
import time
import zipfile
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result
from openpyxl import load_workbook

from latchside.cli import main
from latchside.surveys.template import EXAMPLE, csv_bytes, example, write_template
from latchside.surveys.xlsx_template import workbook

from .support import schemas
from .surveys import COLUMNS, codes, put, read

FORMS = ("yaml", "csv", "xlsx")


def new(path: Path | str) -> Result:
    return CliRunner().invoke(main, ["new", "survey", str(path)])


def sheet_of(path: Path) -> Any:
    return load_workbook(path)["Survey"]


def table(path: Path) -> list[list[Any]]:
    """The cells of a template, by a general reader."""
    if path.suffix == ".csv":
        return list(csv.reader(io.StringIO(path.read_text("utf-8-sig"))))
    return [list(row) for row in sheet_of(path).iter_rows(values_only=True)]


@pytest.mark.parametrize("form", FORMS)
def test_command_writes_it_and_overwrites_nothing(form: str, tmp_path: Path) -> None:
    path = tmp_path / f"corner-shop.{form}"
    result = new(path)
    assert result.exit_code == 0
    assert "latchside plan" in result.output
    before = path.read_bytes()
    result = new(path)
    assert result.exit_code == 1
    assert "is there already; nothing was written" in result.output
    assert path.read_bytes() == before


@pytest.mark.parametrize(
    "name", ["shop.txt", "shop", "Corner Shop.csv", "../-.yaml", "shop.XLSX", "no-folder/shop.csv"]
)
def test_command_refuses_other_names(name: str, tmp_path: Path) -> None:
    result = new(tmp_path / name)
    assert result.exit_code == 1
    assert result.output.startswith("Error:")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("form", FORMS)
def test_the_same_bytes_every_time(form: str, tmp_path: Path) -> None:
    path = tmp_path / f"shop.{form}"
    write_template(path, schemas())
    first = path.read_bytes()
    path.unlink()
    time.sleep(2.1 if form == "xlsx" else 0)  # the times in an archive are of two seconds
    write_template(path, schemas())
    assert path.read_bytes() == first


@pytest.mark.parametrize("form", FORMS)
def test_as_it_is_it_only_lacks_name_and_openings(form: str, tmp_path: Path) -> None:
    path = tmp_path / f"shop.{form}"
    write_template(path, schemas())
    survey, findings = read(path)
    assert survey is None
    assert set(codes(findings)) <= {"missing-key", "no-opening"}
    assert {"name", "opening"} == {word for one in findings for word in ("name", "opening") if word in one.found}


@pytest.mark.parametrize("form", ["csv", "xlsx"])
def test_every_field_stands_in_a_sheet(form: str, tmp_path: Path) -> None:
    path = tmp_path / f"shop.{form}"
    write_template(path, schemas())
    rows = table(path)
    named = [row[0] for row in rows]
    assert set(COLUMNS.above) <= set(named)
    header = next(row for row in rows if row[:3] == ["id", "place", "side"])
    assert [cell for cell in header if cell] == list(COLUMNS.opening)
    notes = {row[0]: row[2] for row in rows if row[0] in COLUMNS.above and len(row) > 2}
    assert all(notes[name] for name in COLUMNS.above)


def test_every_field_stands_in_the_yaml(tmp_path: Path) -> None:
    path = tmp_path / "shop.yaml"
    write_template(path, schemas())
    text = path.read_text("utf-8")
    for column in COLUMNS.above.values():
        assert f"\n{'  ' * (len(column.path) - 1)}{column.path[-1]}:" in text
    for name in COLUMNS.opening:
        assert f"\n#   {name}: " in text


def test_filled_in_as_yaml_it_is_read(tmp_path: Path) -> None:
    path = tmp_path / "shop.yaml"
    write_template(path, schemas())
    head, _, example = path.read_text("utf-8").replace("name:\n", "name: Shop\n").partition("openings:\n")
    lines = [line.removeprefix("# ") for line in example.splitlines()]
    survey, findings = read(put(tmp_path, "shop.yaml", head + "openings:\n" + "\n".join(lines)))
    assert findings == ()
    assert survey
    assert survey.openings[0].id == EXAMPLE["id"]
    assert survey.site.region is None


def test_filled_in_as_csv_it_is_read(tmp_path: Path) -> None:
    path = tmp_path / "shop.csv"
    write_template(path, schemas())
    text = path.read_text("utf-8-sig").replace("name,,", "name,Shop,").replace("# example-", "example-")
    survey, findings = read(put(tmp_path, "shop.csv", text))
    assert findings == ()
    assert survey
    assert (survey.name, survey.openings[0].id) == ("Shop", EXAMPLE["id"])


def test_filled_in_as_xlsx_it_is_read(tmp_path: Path) -> None:
    path = tmp_path / "shop.xlsx"
    write_template(path, schemas())
    book = load_workbook(path)
    sheet: Any = book["Survey"]
    for row in sheet.iter_rows():
        if row[0].value == "name":
            row[1].value = "Shop"
        if str(row[0].value).startswith("# example"):
            row[0].value = "shop-door"
    book.save(path)
    survey, findings = read(path)
    assert findings == ()
    assert survey
    assert (survey.name, survey.openings[0].id, survey.openings[0].play_mm) == ("Shop", "shop-door", 1.5)


def test_the_example_is_the_same_in_all_forms_and_fits() -> None:
    assert schemas().quick["job"].is_valid({"id": "a", "name": "aa", "openings": [example()]})
    assert "nvented" in example()["notes"]


def test_lists_of_words_in_the_workbook(tmp_path: Path) -> None:
    path = tmp_path / "shop.xlsx"
    write_template(path, schemas())
    sheet = sheet_of(path)
    header = next(row for row in sheet.iter_rows() if [cell.value for cell in row[:2]] == ["id", "place"])
    below = {cell.value: sheet.cell(cell.row + 2, cell.column) for cell in header}
    lists = {
        name: validation.formula1
        for name, cell in below.items()
        for validation in sheet.data_validations.dataValidation
        if cell.coordinate in validation.sqref
    }
    words = {
        name: f'"{",".join(one.words)}"' for name, one in COLUMNS.opening.items() if one.sort in ("word", "answer")
    }
    assert lists == words
    above = {sheet.cell(cell.row, 1).value for cell in sheet["B"] if cell.coordinate in _with_lists(sheet)}
    assert {"site.region", "site.occupied", "units", "invented"} <= above
    assert below["gap"].number_format == "@"


def _with_lists(sheet: Any) -> set[str]:
    return {str(one.sqref) for one in sheet.data_validations.dataValidation if ":" not in str(one.sqref)}


def test_nothing_in_the_archive_tells_the_hour(tmp_path: Path) -> None:
    path = tmp_path / "shop.xlsx"
    write_template(path, schemas())
    with zipfile.ZipFile(path) as archive:
        assert {part.date_time for part in archive.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        assert archive.read("docProps/core.xml").count(b"1980-01-01T00:00:00Z") == 2


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@sum", "'=x", "=HYPERLINK(1)"])
def test_what_a_spreadsheet_would_run_is_written_as_text(text: str) -> None:
    sheet: Any = load_workbook(io.BytesIO(workbook([[text]])))["Survey"]
    assert sheet["A1"].data_type == "s"
    assert sheet["A1"].value.lstrip("'") == text.lstrip("'")
    (line,) = csv.reader(io.StringIO(csv_bytes([[text]]).decode("utf-8-sig")))
    assert line[0].startswith("'")
