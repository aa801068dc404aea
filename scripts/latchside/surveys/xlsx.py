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
from latchside.messages import messages
from latchside.surveys.cells import Strange
from latchside.surveys.columns import Columns
from latchside.surveys.sheet import MOST_ROWS, Row, is_header

message = messages(__name__)
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


_OWN_ACTION = ("many-rows", "far-out")
"""What is put right by something else than saving it as a plain workbook."""


class _RefusedError(ValueError):
    """A workbook that is not opened, or not read on: its code, the message that says why, and what that one takes."""

    def __init__(self, code: str, id_: str, **values: str) -> None:
        super().__init__(code, id_)
        self.code, self.id, self.values = code, id_, values


def rows_in(content: bytes, columns: Columns, file: str) -> list[Row] | Finding:
    """The rows of the sheet named Survey or else of the first that has a row of column names."""
    try:
        _sound(content)
        return _rows(content, columns)
    except _RefusedError as refused:
        return _finding(refused, file)
    except Exception:  # a damaged workbook fails in openpyxl with errors of many families
        return _finding(_RefusedError("broken-xlsx", "damaged"), file)


def _finding(refused: _RefusedError, file: str) -> Finding:
    found, expected = (message(f"{refused.id}.{part}", **refused.values) for part in ("found", "expected"))
    action = message(f"{refused.id}.action") if refused.id in _OWN_ACTION else message("plain")
    return Finding(file, START, refused.code, found, expected, action)


def _sound(content: bytes) -> None:
    """Look at the archive alone. Raises _RefusedError."""
    if content.startswith(b"\xd0\xcf\x11\xe0"):
        raise _RefusedError("locked-xlsx", "locked-or-old")
    if not content.startswith(b"PK"):
        raise _RefusedError("broken-xlsx", "no-workbook")
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            _parts(archive.infolist())
            for part in archive.infolist():
                if not part.is_dir():
                    _part(part.filename, archive.read(part))
    except (zipfile.BadZipFile, EOFError, OSError, NotImplementedError, RuntimeError, zlib.error):
        raise _RefusedError("broken-xlsx", "damaged") from None


def _parts(parts: list[zipfile.ZipInfo]) -> None:
    names = [part.filename for part in parts]
    if len(parts) > MOST_PARTS or sum(part.file_size for part in parts) > MOST_INFLATED:
        raise _RefusedError("xlsx-too-large", "unpacks", most=f"{MOST_INFLATED:,}")
    if any(part.file_size > max(SMALL, MOST_RATIO * part.compress_size) for part in parts):
        raise _RefusedError("xlsx-too-large", "packed")
    if any(part.flag_bits & 1 for part in parts):
        raise _RefusedError("locked-xlsx", "locked")
    lowered = [name.lower() for name in names]
    if len(set(lowered)) != len(names) or any(_astray(name) for name in names):
        raise _RefusedError("hostile-xlsx", "astray")
    if any(_REFUSED_PARTS.search(name) and not _SAFE_BINARY.match(name) for name in names):
        raise _RefusedError("active-xlsx", "embedded")
    if _TYPES not in names:
        raise _RefusedError("broken-xlsx", "archive")


def _astray(name: str) -> bool:
    return name.startswith("/") or "\\" in name or ":" in name or ".." in name.split("/") or "\x00" in name


def _part(name: str, data: bytes) -> None:
    if name == _TYPES and _WORKBOOK not in data:
        raise _RefusedError("active-xlsx", "other-sort")
    if not name.lower().endswith((".xml", ".rels", ".vml")):
        return
    if data[:2] in (b"\xff\xfe", b"\xfe\xff") or b"\x00" in data[:100]:
        raise _RefusedError("hostile-xlsx", "not-utf-8")
    if re.search(rb"<!\s*(DOCTYPE|ENTITY)", data, re.IGNORECASE):
        raise _RefusedError("hostile-xlsx", "declarations")
    if any(_HYPERLINK not in link for link in _LINK.findall(data)):
        raise _RefusedError("active-xlsx", "linked")


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
        made = tuple(_value(cell, value) for cell, value in zip(cells, values, strict=False)) if cells else ()
        filled = max((n for n, one in enumerate(made, 1) if one is not None), default=0) if made else 0
        rows += filled > 0
        if rows > MOST_ROWS:
            raise _RefusedError("sheet-too-large", "many-rows", most=str(MOST_ROWS))
        if seen > MOST_CELLS:
            raise _RefusedError("sheet-too-large", "far-out", row=str(line), most=f"{MOST_CELLS:,}")
        if filled:
            yield Row(line, made[:filled])


def _value(cell: Any, cached: Any) -> object:
    """What a cell holds: text, a number, yes or no as a spreadsheet has it, or something strange."""
    value = cell.value
    if cell.data_type == "f":
        if cached is None:
            return Strange("formula", message("formula", formula=_text(value)), message("put-value"))
        value = cached
    if value is None or (isinstance(value, str) and not value.strip()):
        return None
    if cell.data_type == "e" or (isinstance(value, str) and cell.data_type == "f" and value.startswith("#")):
        return Strange("fault-in-cell", message("fault", fault=_text(value)), message("correct-cell"))
    if isinstance(value, str | bool):
        return value
    if isinstance(value, int | float):
        return f"{value * 100:.10g}%" if "%" in str(cell.number_format) else value
    return _day(value)


def _day(value: object) -> Strange:
    action = message("make-text")
    if isinstance(value, datetime) and value.time() == datetime.min.time():
        value = value.date()
    if type(value) is date:
        return Strange("date-cell", message("day", day=value.isoformat()), action, value.isoformat())
    return Strange("date-cell", message("time", time=_text(value)), action)


def _text(value: object) -> str:
    return f'"{" ".join(str(value).split())[:40]}"'
