"""The rows of a sheet and the data of a survey, each read from the other.

Fields of the site stand in rows of their own, name beside value. Then comes a row of column names, among them `place`
and `kind`, and a row for each opening. A row whose first cell starts with # is a remark, and a blank cell says nothing.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from latchside.findings import START, Finding, Place, did_you_mean, quoted
from latchside.library.codes import masked
from latchside.messages import Message, listed, messages
from latchside.read.yaml_text import Document, Path
from latchside.surveys.cells import CellError, cell_of, unguarded, value_of
from latchside.surveys.columns import ID, Column, Columns
from latchside.surveys.text import without_empty

message = messages(__name__)
REMARK = "#"
NEEDED = ("place", "kind")
"""The columns that no table of openings can do without."""
MOST_ROWS = 5000
MOST_COLUMNS = 200
"""What stands in a column beyond these strayed there; a sheet with more rows is refused."""


@dataclass(frozen=True)
class Row:
    """A row of cells; `line` is its place in the file, and None stands for a blank cell."""

    line: int
    cells: tuple[object, ...]

    @property
    def first(self) -> str:
        """The text of the first cell."""
        return "" if not self.cells or self.cells[0] is None else str(self.cells[0]).strip()


@dataclass
class Sheet:
    """What a sheet says: data with the place of each value, and the rows that could not be read."""

    document: Document
    names: dict[Path, str]
    lost: set[int]


def is_header(row: Row, columns: Columns) -> bool:
    """Whether a row names the columns of the openings."""
    known = {_plain(cell) for cell in row.cells[:MOST_COLUMNS] if cell is not None} & columns.opening.keys()
    return known.issuperset(NEEDED) or (_plain(row.first) == ID and len(known) > 2)


def _nearly_header(row: Row, columns: Columns) -> bool:
    """Whether a row names columns of openings, and not one of those that none can do without."""
    known = {_plain(cell) for cell in row.cells[:MOST_COLUMNS] if cell is not None} & columns.opening.keys()
    return len(known) > 1 and _plain(row.first) not in columns.above


def read_rows(rows: Iterable[Row], columns: Columns, file: str) -> Sheet:
    """The data in the rows of a sheet."""
    reader = _Reader(columns, file)
    for row in rows:
        reader.take(row)
    reader.close()
    return reader.sheet


def rows_of(data: Mapping[str, Any], columns: Columns) -> list[list[str | int | float | None]]:
    """The rows that state a survey: its fields, the column names, and a row for each opening."""
    rows: list[list[str | int | float | None]] = []
    for column in columns.above.values():
        value = _at(data, column.path)
        rows += [] if value is None else [[column.name, cell_of(value, column)]]
    rows += [[], list(columns.opening)]
    for opening in data["openings"]:
        values = [(_at(opening, column.path), column) for column in columns.opening.values()]
        rows.append([None if value is None else cell_of(value, column) for value, column in values])
    return rows


def letter(column: int) -> str:
    """The letters a spreadsheet shows above a column that is counted from one."""
    letters = ""
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


class _Reader:
    def __init__(self, columns: Columns, file: str) -> None:
        self._columns = columns
        self._file = file
        self._header: list[Column | None] | None = None
        self._nearly: Row | None = None
        self._taken: set[str] = set()
        self._reported: set[int] = set()
        self._strayed = False
        self._openings: list[dict[str, Any]] = []
        self.sheet = Sheet(Document({"openings": self._openings}, {(): START}), {}, set())

    def take(self, row: Row) -> None:
        """Read one row."""
        row = self._near(row)
        if row.first.startswith(REMARK) or all(_blank(cell) for cell in row.cells):
            return
        if self._header is not None:
            self._opening(row)
        elif is_header(row, self._columns):
            self._header = self._named(row)
        elif self._nearly is None and _nearly_header(row, self._columns):
            self._nearly = row
        else:
            self._above(row)

    def _near(self, row: Row) -> Row:
        """The row without cells far to the right of the table, which are reported once."""
        for number, cell in enumerate(row.cells[MOST_COLUMNS:], MOST_COLUMNS + 1):
            if not _blank(cell) and not self._strayed:
                self._strayed = True
                where, last = f"{letter(number)}{row.line}", letter(MOST_COLUMNS)
                words = message.finding("stray-cell", text=quoted(str(cell)), cell=where, last=last)
                self._find(row.line, number, "stray-cell", *words)
        return row if len(row.cells) <= MOST_COLUMNS else Row(row.line, row.cells[:MOST_COLUMNS])

    def close(self) -> None:
        """After the last row."""
        document = self.sheet.document
        if self._header is None:
            # Without that row any cell above it may be meant as something else, so none is called an unknown field.
            document.findings[:] = [one for one in document.findings if one.code != "unknown-field"]
            found, expected, action = message.finding("no-header")
            if self._nearly:
                known = {_plain(cell) for cell in self._nearly.cells if cell is not None}
                found = message("without-columns", columns=listed([name for name in NEEDED if name not in known]))
            self._find(self._nearly.line if self._nearly else 1, 1, "no-header", found, expected, action)
        document.keys.update(document.places)

    def _named(self, row: Row) -> list[Column | None]:
        made: list[Column | None] = []
        seen: set[str] = set()
        for index, cell in enumerate(row.cells, 1):
            name = "" if _blank(cell) else _plain(cell)
            column = self._columns.opening.get(name)
            if column is None and name:
                hint, text = did_you_mean(name, self._columns.opening), quoted(str(cell))
                words = message.finding("unknown-column", text=text, column=letter(index), hint=hint)
                self._find(row.line, index, "unknown-column", *words)
                self._reported.add(index)
            if name and name in seen:
                words = message.finding("repeated-column", name=quoted(name), column=letter(index))
                self._find(row.line, index, "repeated-column", *words)
                column = None
                self._reported.add(index)
            seen.add(name)
            made.append(column)
        return made

    def _above(self, row: Row) -> None:
        name = _plain(row.first)
        column = self._columns.above.get(name)
        value = row.cells[1] if len(row.cells) > 1 else None
        if column is None:
            hint = did_you_mean(name, self._columns.above)
            if _blank(value) and not hint:
                return  # a heading
            words = message.finding("unknown-field", text=quoted(row.first), hint=hint)
            self._find(row.line, 1, "unknown-field", *words)
        elif not _blank(value):
            if name in self._taken:
                self._find(row.line, 1, "repeated-field", *message.finding("repeated-field", name=name))
            self._taken.add(name)
            self._set(self.sheet.document.value, (), column, value, Place(row.line, 2))

    def _opening(self, row: Row) -> None:
        index = len(self._openings)
        opening: dict[str, Any] = {}
        self._openings.append(opening)
        path: Path = ("openings", index)
        self.sheet.document.places[path] = Place(row.line, 1)
        self.sheet.names[path] = message("row", row=str(row.line))
        header = self._header or []
        for number, cell in enumerate(row.cells, 1):
            if _blank(cell):
                continue
            column = header[number - 1] if number <= len(header) else None
            if column is not None:
                if not self._set(opening, path, column, cell, Place(row.line, number)):
                    self.sheet.lost.add(index)
            elif number not in self._reported:
                self._reported.add(number)
                words = message.finding("unnamed-column", text=quoted(str(cell)), column=letter(number))
                self._find(row.line, number, "unnamed-column", *words)

    def _set(self, into: dict[str, Any], base: Path, column: Column, cell: object, place: Place) -> bool:
        path = (*base, *column.path)
        self.sheet.document.places[path] = place
        self.sheet.names[path] = message("cell", field=column.name, column=letter(place.column))
        try:
            value = value_of(cell, column)
        except CellError as error:
            code, found, expected, action = error.words
            found = message("found-for", found=found, where=self.sheet.names[path])
            self._find(*place, code, found, expected, f"{action} {consequence(path)}")
            return False
        if value is None:
            return True
        for end in range(len(base) + 1, len(path)):
            self.sheet.document.places.setdefault(path[:end], place)
            into = into.setdefault(str(path[end - 1]), {})
        into[column.path[-1]] = value
        return True

    def _find(self, line: int, column: int, code: str, found: str, expected: str, action: str) -> None:
        finding = Finding(self._file, Place(line, column), code, found, expected, action)
        self.sheet.document.findings.append(finding)


DAY = "surveyed"


def consequence(path: Path) -> Message:
    """What becomes of the part of a survey at a path, where it does not read."""
    if len(path) > 1 and path[0] == "openings" and isinstance(path[1], int):
        return message("left-out")
    return message("no-day" if path[0] == DAY else "not-said")


def _blank(cell: object) -> bool:
    return cell is None or (isinstance(cell, str) and not cell.strip())


def _plain(cell: object) -> str:
    return re.sub(r"[\s_-]+", "_", unguarded(without_empty(str(cell)).strip()).casefold())


def _at(data: Any, path: Sequence[str]) -> Any:
    for part in path:
        data = data.get(part) if isinstance(data, Mapping) else None
    return data


def _slug(opening: Mapping[str, Any]) -> str:
    """An id made of place, side and kind."""
    text = masked(" ".join(str(opening[key]) for key in ("place", "side", "kind") if key in opening))
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
    words = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")
    return (words if words[:1].isalpha() else f"opening-{words}".rstrip("-"))[:50].rstrip("-")


def name_openings(nameless: Iterable[dict[str, Any]], all_: Iterable[Mapping[str, Any]]) -> None:
    """Give each opening without an id one of place, side and kind; the second of one name gets a number.

    Each number is tried once, so many openings of one name cost no more than as many of different ones.
    """
    taken = {str(one.get(ID)) for one in all_}
    last: dict[str, int] = {}
    for opening in nameless:
        if ID in opening:
            continue
        made = name = _slug(opening)
        while made in taken:
            last[name] = last.get(name, 1) + 1
            made = f"{name}-{last[name]}"
        taken.add(made)
        opening[ID] = made
