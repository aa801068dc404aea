"""The rows of a CSV file, whichever sign parts its columns."""

from __future__ import annotations

import csv
import io
from dataclasses import dataclass

from latchside.findings import START, Finding, Place
from latchside.messages import messages
from latchside.surveys.columns import Columns
from latchside.surveys.sheet import MOST_ROWS, Row, is_header
from latchside.surveys.text import decoded

message = messages(__name__)
_SEPARATORS = (",", ";", "\t")


@dataclass(frozen=True)
class Table:
    """Rows, and what kept others from being read."""

    rows: tuple[Row, ...]
    findings: tuple[Finding, ...]


def csv_rows(content: bytes, columns: Columns, file: str) -> Table | Finding:
    """The rows of a CSV file; the sign that parts columns is the one that gives a row of column names."""
    text = decoded(content, file)
    if isinstance(text, Finding):
        return text
    first, _, rest = text.partition("\n")
    if first.strip().lower() in [f"sep={sign}".strip() for sign in _SEPARATORS]:
        text = f"\n{rest}"
    tables = [_read(text, sign, file) for sign in _SEPARATORS]
    for table in tables:
        if any(is_header(row, columns) for row in table.rows):
            return _small(table, file)
    return _small(max(tables, key=lambda one: max((len(row.cells) for row in one.rows), default=0)), file)


def _read(text: str, sign: str, file: str) -> Table:
    rows: list[Row] = []
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=sign, strict=True)
    line = 1
    try:
        for cells in reader:
            if any(cell.strip() for cell in cells):
                rows.append(Row(line, tuple(cell if cell.strip() else None for cell in cells)))
            line = reader.line_num + 1
            if len(rows) > MOST_ROWS:
                break
    except csv.Error as error:
        expected, action = message("broken-csv.expected"), message("broken-csv.action")
        return Table(tuple(rows), (Finding(file, Place(line, 1), "broken-csv", str(error), expected, action),))
    return Table(tuple(rows), ())


def _small(table: Table, file: str) -> Table | Finding:
    if len(table.rows) <= MOST_ROWS:
        return table
    return Finding(file, START, "sheet-too-large", *message.finding("sheet-too-large", most=str(MOST_ROWS)))
