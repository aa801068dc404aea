"""A survey to fill in as XLSX: two sheets, lists of the words a cell may hold, and the same bytes every time."""

from __future__ import annotations

import io
import re
import zipfile
from typing import Any

from openpyxl import Workbook
from openpyxl.styles import Alignment, Font, PatternFill
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation

from latchside.messages import messages
from latchside.surveys.cells import guarded
from latchside.surveys.columns import Column, Columns
from latchside.surveys.sheet import REMARK
from latchside.surveys.template import Rows, above_rows, example_rows, heading

message = messages(__name__)
TIME = (1980, 1, 1, 0, 0, 0)
_STAMP = re.compile(rb"(<dcterms:(?:created|modified)[^>]*>)[^<]*")
_FIXED = rb"\g<1>1980-01-01T00:00:00Z"
_AS_TEXT = "@"
READY_ROWS = 500
"""So many rows below the column names are made ready for openings."""
_LISTED = ("word", "answer", "true")
_LONGEST_LIST = 255


def template(id_: str, known: Columns) -> bytes:
    """The workbook to fill in."""
    book = Workbook()
    sheet: Any = book.active
    sheet.title = "Survey"
    rows: Rows = [[f"{REMARK} {line}"] for line in heading(id_, ".xlsx")]
    above = above_rows(id_, known)
    notes, openings = example_rows(known)
    _fill(sheet, [*rows, *above, [], *openings])
    first = len(rows) + 1
    for line, column in enumerate(known.above.values(), first):
        sheet.cell(line, 2).number_format = _AS_TEXT
        _listed(sheet, column, f"B{line}")
    header = first + len(above) + 1
    _columns(sheet, known, header)
    about = book.create_sheet(message("columns"))
    _fill(about, [[str(name).removeprefix(f"{REMARK} "), what] for name, what in notes])
    about.column_dimensions["A"].width, about.column_dimensions["B"].width = 20, 110
    return packed(book)


def workbook(rows: Rows) -> bytes:
    """Rows as a workbook of text and numbers."""
    book = Workbook()
    sheet: Any = book.active
    sheet.title = "Survey"
    _fill(sheet, rows)
    return packed(book)


def _columns(sheet: Any, known: Columns, header: int) -> None:
    """The part for the openings: names in bold, cells as text so that 3/16 stays one, and lists of words."""
    for number, column in enumerate(known.opening.values(), 1):
        name = get_column_letter(number)
        cell = sheet.cell(header, number)
        cell.font, cell.fill = Font(bold=True), PatternFill("solid", fgColor="DDDDDD")
        sheet.cell(header + 1, number).font = Font(italic=True, color="666666")
        sheet.column_dimensions[name].width = 34 if number == 1 else 30 if number == 2 else 16
        _listed(sheet, column, f"{name}{header + 2}:{name}{header + READY_ROWS}")
        if column.sort in ("length", "text", "walls"):
            for line in range(header + 2, header + 102):
                sheet.cell(line, number).number_format = _AS_TEXT
    sheet.freeze_panes = sheet.cell(header + 1, 2)
    for line in range(1, header):
        sheet.cell(line, 3).alignment = Alignment(vertical="top")


def _listed(sheet: Any, column: Column, cells: str) -> None:
    words = ",".join(column.words)
    if column.sort not in _LISTED or len(words) > _LONGEST_LIST:
        return
    choice = DataValidation(type="list", formula1=f'"{words}"', allow_blank=True, showErrorMessage=True)
    choice.errorTitle, choice.error = message("no-listed-word"), message("choose")
    sheet.add_data_validation(choice)
    choice.add(cells)


def _fill(sheet: Any, rows: Rows) -> None:
    for line, row in enumerate(rows, 1):
        for number, value in enumerate(row, 1):
            if value is None:
                continue
            cell = sheet.cell(line, number)
            cell.value = guarded(value) if isinstance(value, str) and value.startswith("'") else value
            if isinstance(value, str):
                cell.data_type = "s"  # text, whatever it starts with


def packed(book: Workbook) -> bytes:
    """The workbook in bytes that depend on its content alone, not on the clock."""
    saved, made = io.BytesIO(), io.BytesIO()
    book.save(saved)
    with zipfile.ZipFile(saved) as old, zipfile.ZipFile(made, "w") as new:
        for part in old.infolist():
            info = zipfile.ZipInfo(part.filename, TIME)
            info.compress_type, info.external_attr, info.create_system = zipfile.ZIP_DEFLATED, 0o644 << 16, 3
            data = old.read(part)
            new.writestr(info, _STAMP.sub(_FIXED, data) if part.filename == "docProps/core.xml" else data)
    return made.getvalue()
