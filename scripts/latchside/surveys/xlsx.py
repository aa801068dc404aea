"""The rows of an XLSX file. What is no plain workbook is refused before it is opened; nothing in it is ever run."""

from __future__ import annotations

import io
import re
import warnings
import zipfile
import zlib
from collections.abc import Iterator
from datetime import date, datetime
from typing import Any

from latchside.findings import START, Finding
from latchside.surveys.cells import Strange
from latchside.surveys.columns import Columns
from latchside.surveys.sheet import MOST_ROWS, Row, is_header

MOST_INFLATED = 50_000_000
MOST_RATIO = 200
"""How much smaller than its content a part may be; a workbook of text stays far below."""
SMALL = 1_000_000
MOST_PARTS = 500
MOST_CELLS = 2_000_000
SHEET = "survey"
_TYPES = "[Content_Types].xml"
_WORKBOOK = b"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"
_HYPERLINK = b"/relationships/hyperlink"
_REFUSED_PARTS = re.compile(
    r"vba|macro|activex|embeddings|externallinks|customui|ctrlprops|oleobject|\.bin$|querytables|connections\.xml",
    re.IGNORECASE,
)
_SAFE_BINARY = re.compile(r"xl/printerSettings/[\w.]+\.bin\Z")
_LINK = re.compile(rb"<[^<>]*\bTargetMode\s*=\s*[\"']\s*External[^<>]*>", re.IGNORECASE)
_PLAIN = "Save the survey as a plain workbook (.xlsx), or as CSV."


class _RefusedError(ValueError):
    """A workbook that is not opened, or not read on; code, what was found, what is expected and, if it differs, what
    to do."""


def rows_in(content: bytes, columns: Columns, file: str) -> list[Row] | Finding:
    """The rows of the sheet named Survey or else of the first that has a row of column names."""
    try:
        _sound(content)
        return _rows(content, columns)
    except _RefusedError as refused:
        code, found, expected, *action = refused.args
        return Finding(file, START, code, found, expected, *(action or [_PLAIN]))
    except Exception:  # a damaged workbook fails in openpyxl with errors of many families
        return Finding(file, START, "broken-xlsx", "a damaged workbook", "an XLSX workbook", _PLAIN)


def _sound(content: bytes) -> None:
    """Look at the archive alone. Raises _RefusedError."""
    if content.startswith(b"\xd0\xcf\x11\xe0"):
        raise _RefusedError("locked-xlsx", "an old or locked workbook", "an XLSX workbook without a password")
    if not content.startswith(b"PK"):
        raise _RefusedError("broken-xlsx", "no XLSX workbook", "an XLSX workbook")
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            _parts(archive.infolist())
            for part in archive.infolist():
                if not part.is_dir():
                    _part(part.filename, archive.read(part))
    except (zipfile.BadZipFile, EOFError, OSError, NotImplementedError, RuntimeError, zlib.error):
        raise _RefusedError("broken-xlsx", "a damaged workbook", "an XLSX workbook") from None


def _parts(parts: list[zipfile.ZipInfo]) -> None:
    names = [part.filename for part in parts]
    if len(parts) > MOST_PARTS or sum(part.file_size for part in parts) > MOST_INFLATED:
        raise _RefusedError("xlsx-too-large", "a workbook that unpacks to more", f"at most {MOST_INFLATED:,} bytes")
    if any(part.file_size > max(SMALL, MOST_RATIO * part.compress_size) for part in parts):
        raise _RefusedError("xlsx-too-large", "a workbook packed tighter than text can be", "a workbook of text")
    if any(part.flag_bits & 1 for part in parts):
        raise _RefusedError("locked-xlsx", "a locked workbook", "an XLSX workbook without a password")
    lowered = [name.lower() for name in names]
    if len(set(lowered)) != len(names) or any(_astray(name) for name in names):
        raise _RefusedError("hostile-xlsx", "parts with names that lead elsewhere", "an XLSX workbook")
    if any(_REFUSED_PARTS.search(name) and not _SAFE_BINARY.match(name) for name in names):
        raise _RefusedError("active-xlsx", "a workbook with macros, links or embedded files", "text and numbers alone")
    if _TYPES not in names:
        raise _RefusedError("broken-xlsx", "an archive that is no workbook", "an XLSX workbook")


def _astray(name: str) -> bool:
    return name.startswith("/") or "\\" in name or ":" in name or ".." in name.split("/") or "\x00" in name


def _part(name: str, data: bytes) -> None:
    if name == _TYPES and _WORKBOOK not in data:
        raise _RefusedError("active-xlsx", "a workbook of another sort, such as one with macros", "a plain workbook")
    if not name.lower().endswith((".xml", ".rels", ".vml")):
        return
    if data[:2] in (b"\xff\xfe", b"\xfe\xff") or b"\x00" in data[:100]:
        raise _RefusedError("hostile-xlsx", "parts that are no UTF-8", "an XLSX workbook")
    if re.search(rb"<!\s*(DOCTYPE|ENTITY)", data, re.IGNORECASE):
        raise _RefusedError("hostile-xlsx", "declarations that no workbook needs", "an XLSX workbook")
    if any(_HYPERLINK not in link for link in _LINK.findall(data)):
        raise _RefusedError("active-xlsx", "a workbook with links to other files", "text and numbers alone")


def _rows(content: bytes, columns: Columns) -> list[Row]:
    from openpyxl import load_workbook

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # about styles and lists that are not read
        book = load_workbook(io.BytesIO(content), read_only=True, keep_links=False)
        cached = load_workbook(io.BytesIO(content), read_only=True, keep_links=False, data_only=True)
        sheets = [name for name in book.sheetnames if name.strip().casefold() == SHEET] or book.sheetnames
        read: list[list[Row]] = []
        for name in sheets:
            rows = list(_cells(book[name], cached[name]))
            if any(is_header(row, columns) for row in rows):
                return rows
            read.append(rows)
    return max(read, key=len, default=[])


def _cells(sheet: Any, cached: Any) -> Iterator[Row]:
    """The rows that hold something. What a formula came to when it was saved stands in `cached`."""
    if not hasattr(sheet, "reset_dimensions"):
        return  # a sheet of drawings
    for one in (sheet, cached):
        one.reset_dimensions()  # what a file says of its own size may be wrong
    rows = seen = 0
    worked: Iterator[Any] = cached.iter_rows(values_only=True)
    for line, (cells, values) in enumerate(zip(sheet.iter_rows(), worked, strict=False), 1):
        seen += len(cells) + 1
        made = tuple(_value(cell, value) for cell, value in zip(cells, values, strict=False))
        filled = max((n for n, one in enumerate(made, 1) if one is not None), default=0)
        rows += filled > 0
        if rows > MOST_ROWS:
            raise _RefusedError("sheet-too-large", "more rows", f"at most {MOST_ROWS} rows", "Split the survey.")
        if seen > MOST_CELLS:
            found, expected = f"cells far out, as in row {line}", f"at most {MOST_CELLS:,} cells, blank ones too"
            action = "Delete the rows and columns beyond the table, also where they look empty, and save again."
            raise _RefusedError("sheet-too-large", found, expected, action)
        if filled:
            yield Row(line, made[:filled])


def _value(cell: Any, cached: Any) -> object:
    """What a cell holds: text, a number, yes or no as a spreadsheet has it, or something strange."""
    value = cell.value
    if cell.data_type == "f":
        if cached is None:
            found = f"a formula without a saved result, {_text(value)}"
            return Strange("formula", found, "Put the value itself in the cell.")
        value = cached
    if value is None or (isinstance(value, str) and not value.strip()):
        return None
    if cell.data_type == "e" or (isinstance(value, str) and cell.data_type == "f" and value.startswith("#")):
        return Strange("fault-in-cell", f"the fault {_text(value)}", "Correct the cell.")
    if isinstance(value, str | bool):
        return value
    if isinstance(value, int | float):
        return f"{value * 100:.10g}%" if "%" in str(cell.number_format) else value
    return _day(value)


def _day(value: object) -> Strange:
    action = "Make the cell text, and type it again; a spreadsheet makes a day of 3/16."
    if isinstance(value, datetime) and value.time() == datetime.min.time():
        value = value.date()
    if type(value) is date:
        return Strange("date-cell", f"the day {value.isoformat()}", action, value.isoformat())
    return Strange("date-cell", f"the time {_text(value)}", action)


def _text(value: object) -> str:
    return f'"{" ".join(str(value).split())[:40]}"'
