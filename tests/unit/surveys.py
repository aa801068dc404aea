"""What the tests of a survey share: files of every form, and surveys made by chance."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from latchside.findings import Finding
from latchside.surveys.columns import Column, columns
from latchside.surveys.read import read_survey
from latchside.surveys.sheet import rows_of
from latchside.surveys.survey import Survey
from latchside.surveys.template import Rows, csv_bytes

from .support import schemas

COLUMNS = columns(schemas())
DATA: dict[str, Any] = {
    "id": "boat-shed", "name": "Boat shed", "invented": True, "surveyed": "2026-01-12",
    "site": {"region": "europe", "year_built": "unknown", "occupied": "no"},
    "control_unit": {"frequency": 868.3, "sensitivity": -104, "zones_in_use": ["Safe", "Hall"]},
    "rules": {"cable_spare": "2 m"},
    "openings": [
        {
            "id": "shed-door", "place": "Shed", "side": "lake", "kind": "hinged-door", "gap": "3/16 in",
            "step": "-2 mm", "walls": [{"material": "brick", "thickness": "4 1/2 in"}, {"material": "foil"}],
            "height": 2.1, "fire_rated": "no", "floors": 0, "hardware": ["panic-bar", "closer"],
            "rail_depth": "1 1/2 in",
            "device": {"class": "surface-contact", "reason": "It is there."},
        },
        {"id": "loft-hatch", "place": "Loft", "kind": "hatch", "walls": [], "steel": "none", "hardware": []},
    ],
}  # fmt: skip
"""A survey with a field of each sort."""
FORMS = ("yaml", "json", "csv", "xlsx")


def read(path: Path) -> tuple[Survey | None, tuple[Finding, ...]]:
    return read_survey(path, schemas())


def put(folder: Path, name: str, content: str | bytes) -> Path:
    path = folder / name
    path.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8"))
    return path


def rows(data: Mapping[str, Any]) -> Rows:
    return rows_of(data, COLUMNS)


def written(data: Mapping[str, Any], form: str) -> bytes:
    """The survey as a file of a form."""
    if form == "csv":
        return csv_bytes(rows(data))
    if form == "xlsx":
        from latchside.surveys.xlsx_template import workbook

        return workbook(rows(data))
    return json.dumps(data, ensure_ascii=form == "json").encode("utf-8")


def codes(findings: tuple[Finding, ...]) -> list[str]:
    return [one.code for one in findings]


def places(findings: tuple[Finding, ...]) -> list[tuple[str, int, int]]:
    return [(one.code, one.place.line, one.place.column) for one in findings]


# -- surveys made by chance ------------------------------------------------------------------------------------

_IDS = st.from_regex(r"\A[a-z][a-z0-9]{0,8}(-[a-z0-9]{1,5}){0,2}\Z")
_SIGNS = st.characters(exclude_categories=["C", "Zl", "Zp", "Zs"], exclude_characters=";")
_WORDS = st.lists(st.text(_SIGNS, min_size=1, max_size=9), min_size=1, max_size=3).map(" ".join)
_TEXTS = st.one_of(
    _WORDS, st.sampled_from(["=1+1", "+39 lamps", "-", "@home", "'=x", "''", "12", "3.50", "TRUE", "1,5"])
)
_TEXTS = _TEXTS.filter(lambda text: text.strip() == text and 1 <= len(text) <= 40 and text.casefold() != "none")
_SHORT = st.sampled_from(["4 mm", "3/16 in", "0", 3, 2.5, '1 1/8"', "2,5 mm", "0.4 cm", "½ in"])
_LONG = st.sampled_from(["4 m", "12 ft 6 in", "0", 3, 2.5, "5'", "2,5 m", "80 cm"])
_NUMBERS = {
    "site.year_built": st.one_of(st.integers(1000, 2100), st.just("unknown")),
    "control_unit.frequency": st.floats(80, 6000).map(lambda x: round(x, 3)),
    "control_unit.sensitivity": st.integers(-150, -20),
    "control_unit.name_length": st.integers(8, 64),
    "rules.day_minutes": st.integers(60, 1440),
    "rules.technicians": st.integers(1, 20),
    "rules.service_months": st.integers(1, 60),
    "cable_area": st.sampled_from([0.22, 0.5, 1.5, 2]),
    "floors": st.integers(0, 10),
}


def _value(column: Column) -> st.SearchStrategy[Any]:
    wall = st.builds(
        lambda material, thickness: {"material": material} | ({"thickness": thickness} if thickness else {}),
        st.sampled_from(column.words or ("brick",)),
        st.sampled_from([None, "100 mm", "4 1/2 in", "12"]),
    )
    strategies: dict[str, st.SearchStrategy[Any]] = {
        "text": _TEXTS.filter(lambda text: len(text) > 1) if column.name in ("name", "summary") else _TEXTS,
        "length": _SHORT if column.unit == "mm" else _LONG,
        "number": _NUMBERS.get(column.name, st.integers(1, 40)),
        "true": st.just(True),
        "words": st.lists(st.sampled_from(column.words) if column.words else _TEXTS, max_size=3, unique=True),
        "walls": st.lists(wall, max_size=3),
        "day": st.dates().filter(lambda day: 2000 <= day.year <= 2099).map(lambda day: day.isoformat()),
    }
    if column.path[-1] == "no_codes":
        return st.lists(st.sampled_from(["notes", "place", "site.notes"]), min_size=1, max_size=2, unique=True)
    if column.path[-1] in ("id", "class"):
        return _IDS
    return st.sampled_from(column.words) if column.sort in ("word", "answer") else strategies[column.sort]


@st.composite
def _group(draw: st.DrawFn, known: Mapping[str, Column]) -> dict[str, Any]:
    made: dict[str, Any] = {}
    for column in known.values():
        both = column.path[0] == "device"
        if column.required or (draw(st.booleans()) and not both):
            into = made
            for part in column.path[:-1]:
                into = into.setdefault(part, {})
            into[column.path[-1]] = draw(_value(column))
    if "kind" in known and draw(st.booleans()):
        made["device"] = {"class": draw(_IDS), "reason": draw(_TEXTS)}
    return made


def surveys() -> st.SearchStrategy[dict[str, Any]]:
    """Data that fits the schema, with any fields said or left out."""
    openings = st.lists(_group(COLUMNS.opening), min_size=1, max_size=4, unique_by=lambda one: one["id"])
    return st.builds(lambda head, listed: {**head, "openings": listed}, _group(COLUMNS.above), openings)
