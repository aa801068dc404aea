"""A survey read from a file: YAML, JSON, CSV or XLSX. What is wrong becomes findings, and the rest is not lost."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path as File
from typing import Any

from latchside.findings import START, Finding
from latchside.kinds import KINDS
from latchside.messages import messages
from latchside.read.tree import RawRecord
from latchside.read.yaml_text import Document
from latchside.schemas import Schemas
from latchside.schemas.validate import misfits
from latchside.surveys import codes
from latchside.surveys.build import Misread, Path, build, misread_lengths, survey_of
from latchside.surveys.columns import ID, columns
from latchside.surveys.sheet import Sheet, consequence, name_openings, read_rows
from latchside.surveys.survey import Survey
from latchside.surveys.text import document_of, strange_sign, visible, without_empty

__all__ = ["read_survey", "survey_of"]

message = messages(__name__)
TOO_MANY = "too-many-openings"
LARGEST = 5_000_000
MOST_FINDINGS = 300
ENDINGS = (".yaml", ".yml", ".json", ".csv", ".tsv", ".xlsx")
NAME = "name"
_LINE = {".csv": "line-csv", ".tsv": "line-cells", ".xlsx": "line-cells", ".json": "line-json"}
"""The message that shows how a field of the survey is written, where it is not as in YAML."""
_NO_LIST = ("no-header", "broken-csv")
"""What says already why there is no opening."""
_SOUND = {"id": "a", "place": "a", "kind": "hatch"}
"""Stands for an opening that fits, or is left out already, while the others are looked at."""


def read_survey(path: File, schemas: Schemas) -> tuple[Survey | None, tuple[Finding, ...]]:
    """The survey in a file and what is wrong with it. An opening with an error is left out; the others are there."""
    file = str(path)
    content = _content(path)
    if isinstance(content, Finding):
        return None, (content,)
    found = _sheet(content, path.suffix.lower(), file, schemas)
    if isinstance(found, Finding):
        return None, (found,)
    survey = _Survey(found, path, schemas)
    made = survey.read()
    return made, _few(sorted(set(survey.findings)), file)


def _content(path: File) -> bytes | Finding:
    def refuse(code: str, **values: str) -> Finding:
        return Finding(str(path), START, code, *message.finding(code, **values))

    if path.suffix.lower() not in ENDINGS:
        return refuse("file-ending", name=path.name, endings=", ".join(ENDINGS))
    if not path.is_file():
        return refuse("not-a-file")
    try:
        with path.open("rb") as opened:
            data = opened.read(LARGEST + 1)
    except OSError as error:
        refused = refuse("cannot-read")
        return replace(refused, found=error.strerror) if error.strerror else refused
    if len(data) > LARGEST:
        return refuse("file-too-large", most=f"{LARGEST:,}")
    if not data.strip():
        return refuse("empty-file")
    return data


def _sheet(content: bytes, ending: str, file: str, schemas: Schemas) -> Sheet | Finding:
    if ending == ".xlsx":
        from latchside.surveys.xlsx import rows_in  # openpyxl is slow to import, and only needed here

        rows = rows_in(content, columns(schemas), file)
        return rows if isinstance(rows, Finding) else read_rows(rows, columns(schemas), file)
    if ending in (".csv", ".tsv"):
        from latchside.surveys.csv_rows import csv_rows

        table = csv_rows(content, columns(schemas), file)
        if isinstance(table, Finding):
            return table
        sheet = read_rows(table.rows, columns(schemas), file)
        sheet.document.findings.extend(table.findings)
        return sheet
    document = document_of(content, ending, file)
    return document if isinstance(document, Finding) else Sheet(document, {}, set())


@dataclass
class _Survey:
    """The data of a survey on its way to be one."""

    sheet: Sheet
    path: File
    schemas: Schemas
    findings: list[Finding] = field(default_factory=list)

    def read(self) -> Survey | None:
        document = self.sheet.document
        self.findings += document.findings
        data = _without_blanks(document.value)
        if not isinstance(data, dict):
            if not document.findings:
                self._find((), "wrong-type", *message.finding("wrong-type"))
            return None
        if self._too_many(data.get("openings")):
            return None
        self._strange(data)
        self._name(data)
        broken = set(self._misfits(data))
        lost = self.sheet.lost | {int(path[1]) for path in broken if _in_opening(path)}
        listed = data.get("openings")
        whole = listed if isinstance(listed, list) else []
        openings = [(index, one) for index, one in enumerate(whole) if index not in lost]
        for index in sorted(lost):
            self._lengths_too(index, whole, broken, data)
        if not openings:
            if listed == [] and not any(one.code in _NO_LIST for one in self.findings):
                self._find(("openings",), "no-opening", *message.finding("no-opening"))
            return None
        for path in sorted((p for p in broken if p[:1] != ("openings",)), key=len, reverse=True):
            _drop(data, path)
        data.setdefault(ID, self._own_id())
        data.setdefault(NAME, data[ID])
        self._codes(data, {index for index, _ in openings})
        survey, misread = build({**data, "openings": [one for _, one in openings]})
        self._misread(misread, [index for index, _ in openings])
        return survey if survey.openings else None

    def _name(self, data: dict[str, Any]) -> None:
        """Give survey and openings the ids they lack; and say what a survey needs, with the line to add."""
        for key, example in ((ID, self._own_id()), (NAME, message("example-name"))):
            if key not in data:
                stand_in = self._own_id() if key == ID else _name_from(data[ID])
                line = message(_LINE.get(self.path.suffix.lower(), "line-yaml"), key=key, value=example)
                words = message.finding("missing-key", key=key, line=line, until=str(stand_in))
                self._find((), "missing-key", *words)
                data[key] = stand_in
        listed = data.get("openings")
        openings = [
            one
            for index, one in enumerate(listed if isinstance(listed, list) else ())
            if isinstance(one, dict) and index not in self.sheet.lost
        ]
        name_openings(openings, openings)

    def _too_many(self, listed: object) -> bool:
        """Whether there are more openings than one survey may have; then that is all that is reported."""
        most = int(self.schemas.documents["job.schema.json"]["properties"]["openings"]["maxItems"])
        if not isinstance(listed, list) or len(listed) <= most:
            return False
        words = message.finding(TOO_MANY, count=len(listed), most=most)
        self._find(("openings", most), TOO_MANY, *words)
        return True

    def _misfits(self, data: dict[str, Any]) -> Iterator[Path]:
        """The paths of what does not fit the schema. Openings that do are set aside, so that many cost little."""
        listed = data.get("openings")
        quick = self.schemas.quick["job"]
        frame = {ID: "a", "name": "aa"}
        if isinstance(listed, list):
            lost = self.sheet.lost
            aside = [
                _SOUND if n in lost or quick.is_valid({**frame, "openings": [one]}) else one
                for n, one in enumerate(listed)
            ]
            data = {**data, "openings": aside}
        raw = RawRecord(KINDS["job"], str(self.path), self.path.stem, Document(data, *self._places()))
        for path, finding in misfits(raw, self.schemas, self._named):
            if path != ("openings",) or listed != []:
                self.findings.append(_with(finding, path))
            yield path

    def _places(self) -> tuple[dict[Path, Any], dict[Path, Any]]:
        return self.sheet.document.places, self.sheet.document.keys

    def _named(self, path: Path) -> str:
        """A path in words: field and column of a sheet, or the field and the opening it belongs to."""
        for end in range(len(path), 0, -1):
            if path[:end] in self.sheet.names:
                return self.sheet.names[path[:end]]
        if not _in_opening(path):
            return ".".join(map(str, path)) or message("the-survey")
        opening = self.sheet.document.value["openings"][path[1]]
        name = opening.get(ID) if isinstance(opening, Mapping) else None
        which = str(name)[:60] if name else message("opening", number=str(int(path[1]) + 1))
        return message("field-of", field=".".join(map(str, path[2:])), opening=which) if path[2:] else which

    def _strange(self, data: dict[str, Any]) -> None:
        """Texts with hidden signs: an opening with one is left out, any other such field is dropped."""
        for path, text in list(_texts(data, ())):
            sign = strange_sign(text)
            if sign is None:
                continue
            words = message.finding("hidden-sign", sign=f"U+{ord(sign):04X}", where=self._named(path))
            self._find(path, "hidden-sign", *words)
            if _in_opening(path):
                self.sheet.lost.add(int(path[1]))
            else:
                _drop(data, path)

    def _codes(self, data: dict[str, Any], read: set[int]) -> None:
        """What looks like a code is kept out of the survey as it is planned, and reported."""
        for path, code in codes.withhold(data, self.schemas.shapes["job"]):
            if _in_opening(path) and path[1] not in read:
                continue
            found, expected = message("code.found", where=self._named(path)), message("code.expected")
            place, advice = self._raw().place(*path), codes.advice(path, code)
            self.findings.append(Finding(str(self.path), place, code, found, expected, advice, "warning"))

    def _misread(self, misread: tuple[Misread, ...], indices: list[int]) -> None:
        for one in misread:
            path = one.path
            if _in_opening(path):
                path = ("openings", indices[int(path[1])], *path[2:])
            found = message("found-for", found=one.found, where=self._named(path))
            self._find(path, one.code, found, one.expected, one.action)

    def _lengths_too(self, index: int, listed: list[Any], broken: set[Path], data: Mapping[str, Any]) -> None:
        """The lengths that cannot be read in an opening left out already, so that one run says all that is wrong."""
        if index >= len(listed):
            return
        imperial = data.get("units") == "imperial"
        misread = misread_lengths(listed[index], ("openings", index), imperial)
        for one in misread:
            if one.path not in broken:
                found = message("found-for", found=one.found, where=self._named(one.path))
                self._find(one.path, one.code, found, one.expected, one.action)

    def _find(self, path: Path, code: str, found: str, expected: str, action: str) -> None:
        place = self._raw().place(*path)
        self.findings.append(_with(Finding(str(self.path), place, code, found, expected, action), path))

    def _raw(self) -> RawRecord:
        return RawRecord(KINDS["job"], str(self.path), self.path.stem, self.sheet.document)

    def _own_id(self) -> str:
        """An id for a survey without one, from the name of its file."""
        frame = {ID: self.path.stem, "name": "aa", "openings": [_SOUND]}
        return self.path.stem if self.schemas.quick["job"].is_valid(frame) else "survey"


def _name_from(id_: object) -> str:
    """A name for a survey without one: its id, which may be shorter than a name."""
    return id_ if isinstance(id_, str) and len(id_) > 1 else str(message("stand-in-name", id=str(id_)))


def _with(finding: Finding, path: Path) -> Finding:
    """A finding that says what becomes of the part it is about."""
    if path[:1] in ((), ("openings",)) and not _in_opening(path):
        return finding
    if finding.code == TOO_MANY:  # nothing of such a survey is planned, as its own words say
        return finding
    return replace(finding, action=f"{finding.action} {consequence(path)}")


def _in_opening(path: Path) -> bool:
    return len(path) > 1 and path[0] == "openings" and isinstance(path[1], int)


def _without_blanks(value: Any) -> Any:
    """The data without what was left blank."""
    if isinstance(value, dict):
        return {key: _without_blanks(below) for key, below in value.items() if below is not None}
    if isinstance(value, str):
        return without_empty(value)
    return [_without_blanks(below) for below in value] if isinstance(value, list) else value


def _texts(value: Any, path: Path) -> Iterator[tuple[Path, str]]:
    if isinstance(value, str):
        yield path, value
    elif isinstance(value, dict | list):
        for key, below in value.items() if isinstance(value, dict) else enumerate(value):
            yield from _texts(below, (*path, key))


def _drop(data: Any, path: Path) -> None:
    """Take the value at a path out of the data; what stands in a list goes with the list."""
    for index, part in enumerate(path):
        if not isinstance(data, dict) or part not in data:
            return
        if index == len(path) - 1 or isinstance(data[part], list):
            del data[part]
            return
        data = data[part]


def _few(findings: list[Finding], file: str) -> tuple[Finding, ...]:
    """The findings, not too many of them, and each with signs that can be seen."""
    findings = [replace(one, found=visible(one.found), expected=visible(one.expected)) for one in findings]
    if len(findings) <= MOST_FINDINGS:
        return tuple(findings)
    words = message.finding("too-many-findings", count=len(findings) - MOST_FINDINGS)
    return (*findings[:MOST_FINDINGS], Finding(file, START, "too-many-findings", *words))
