"""Texts of a survey that look as if they held a code: said with their field and place, never a reason to refuse."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from latchside.messages import messages
from latchside.surveys.survey import Survey

from .surveys import DATA, FORMS, codes, put, read, written

INNOCENT = (
    "Room 1204", "Combination window", "Flat 4, 1204 Mill Street", "hinge pin worn", "local code asks",
    "The code is with the caretaker", "Code lock on the door", "Built to the fire code 2018",
)  # fmt: skip


def changed(**fields: Any) -> dict[str, Any]:
    first, *rest = DATA["openings"]
    return {**DATA, "openings": [{**first, **fields}, *rest]}


def read_in(form: str, data: dict[str, Any], folder: Path) -> tuple[Survey, tuple[Any, ...]]:
    survey, findings = read(put(folder, f"boat-shed.{form}", written(data, form)))
    assert survey is not None
    return survey, findings


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("text", INNOCENT)
def test_rooms_streets_parts_and_rules_are_no_codes(form: str, text: str, tmp_path: Path) -> None:
    data = {**changed(place=text, notes=text), "name": text, "control_unit": {"zones_in_use": [text]}}
    survey, findings = read_in(form, data, tmp_path)
    assert findings == ()
    assert (survey.openings[0].place, survey.openings[0].notes, survey.name) == (text, text, text)


@pytest.mark.parametrize("form", FORMS)
def test_a_note_is_kept_out_and_a_name_masked_and_each_is_named(form: str, tmp_path: Path) -> None:
    data = changed(notes="PIN 4711 by the gate", side="keysafe 4812")
    survey, findings = read_in(form, data, tmp_path)
    first = survey.openings[0]
    assert (first.notes, first.side) == (messages("latchside.surveys.codes")("withheld"), "keysafe \u2026")
    assert len(survey.openings) == 2
    assert {(one.code, one.level) for one in findings} == {("code-in-note", "warning"), ("code-in-name", "warning")}
    named = {one.code: one.found for one in findings}
    assert "notes" in named["code-in-note"]
    assert "side" in named["code-in-name"]
    assert not [one for one in findings if "4711" in str(one) or "4812" in str(one)]
    assert all("no_codes" in one.action for one in findings)


def test_the_finding_points_to_the_text(tmp_path: Path) -> None:
    text = "id: a\nname: Oak House\nopenings:\n  - id: b\n    place: Hall\n    kind: hatch\n    notes: code 4711\n"
    found = read(put(tmp_path, "a.yaml", text))[1]
    assert [(one.code, one.place) for one in found] == [("code-in-note", (7, 12))]


@pytest.mark.parametrize("form", FORMS)
def test_what_the_file_confirms_is_left_as_it_is(form: str, tmp_path: Path) -> None:
    data = changed(notes="code 4711", side="code 4812", no_codes=["notes"])
    data |= {"site": {"notes": "code 4913"}, "no_codes": ["site.notes"]}
    survey, findings = read_in(form, data, tmp_path)
    assert (survey.openings[0].notes, survey.site.notes) == ("code 4711", "code 4913")
    assert codes(findings) == ["code-in-name"]


def test_an_id_made_of_names_holds_no_code(tmp_path: Path) -> None:
    survey, _ = read(put(tmp_path, "a.csv", "id,a\nname,Ab\nplace,kind\nHall code 4711,hatch\n"))
    assert survey is not None
    assert survey.openings[0].id == "hall-code-hatch"


def test_every_text_of_the_schema_is_looked_at(tmp_path: Path) -> None:
    """A text at every place where a survey can have one, found by walking the schema's own marks."""
    text = "code 4711"
    data = changed(place=text, side=text, spoken=text, notes=text, device={"class": "surface-contact", "reason": text})
    data |= {"name": text, "summary": text, "site": {"notes": text}, "control_unit": {"zones_in_use": [text]}}
    survey, findings = read_in("json", data, tmp_path)
    assert len(findings) == 9
    assert "4711" not in str(survey)
