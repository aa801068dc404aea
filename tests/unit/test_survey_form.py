"""The form of a survey is its schema, described: nothing missing, nothing nameless, and new fields without a script."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from hypothesis import given

from latchside.figures.catalogue import catalogue
from latchside.library import Library
from latchside.pages.survey_form import SCHEMA, fields, sheet_rows, survey_form
from latchside.planning.askable import askable
from latchside.planning.make import make_plan
from latchside.surveys import build
from latchside.surveys.survey import Survey

from ..long import LONG
from .random_surveys import draws, surveys
from .support import schemas

ASKS = {"answer", "choice", "number", "length", "text", "day", "list", "group", "fixed"}
JOB = schemas().documents[SCHEMA]
OPENING = JOB["$defs"]["opening"]


def every(described: list[dict[str, Any]]) -> Iterator[dict[str, Any]]:
    for one in described:
        yield one
        yield from every(one.get("fields", []))
        yield from every([one["item"]] if "item" in one else [])


def named(described: list[dict[str, Any]], *way: str) -> dict[str, Any]:
    """The field at the end of a way of names; a list is gone into."""
    name, *rest = way
    found = next(one for one in described if one["name"] == name)
    return named(found.get("fields") or found["item"]["fields"], *rest) if rest else found


def names(described: list[dict[str, Any]]) -> list[str]:
    return [one["name"] for one in described]


@pytest.fixture(scope="module")
def form(shipped_library: Library) -> list[dict[str, Any]]:
    return fields(shipped_library)


MORE: dict[str, dict[str, Any]] = {
    "ajar_angle": {"type": "number", "minimum": 0, "maximum": 90, "description": "Angle at which it stands ajar."},
    "depth": {"$ref": "#/$defs/length", "description": "Depth of the frame."},
    "odd": {"type": "string", "description": "</script><b>\u2028"},
}


@pytest.fixture(scope="module")
def grown(shipped_library: Library) -> Iterator[Library]:
    """The library with more properties of an opening. What a plan could ask is worked out for it in the long run."""
    documents = copy.deepcopy(shipped_library.schemas.documents)
    documents[SCHEMA]["$defs"]["opening"]["properties"] |= MORE
    with pytest.MonkeyPatch.context() as patch:
        if not LONG:
            patch.setattr("latchside.pages.survey_form.askable", lambda _: askable(shipped_library))
        yield replace(shipped_library, schemas=replace(shipped_library.schemas, documents=documents))


def test_every_property_is_asked_in_the_order_of_the_schema(form: list[dict[str, Any]]) -> None:
    assert names(form) == list(JOB["properties"])
    for group in ("site", "control_unit", "rules"):
        assert names(named(form, group)["fields"]) == list(JOB["properties"][group]["properties"])
    assert names(named(form, "openings")["item"]["fields"]) == list(OPENING["properties"])
    assert names(named(form, "openings", "walls")["item"]["fields"]) == list(JOB["$defs"]["wall"]["properties"])
    assert names(named(form, "openings", "device")["fields"]) == list(OPENING["properties"]["device"]["properties"])


def test_every_field_has_a_label_a_help_and_a_way_to_answer(form: list[dict[str, Any]]) -> None:
    for one in every(form):
        assert one["label"], one
        assert one["help"], one
        assert one["ask"] in ASKS, one
        assert "_" not in one["label"], one


def test_labels_within_a_group_differ(form: list[dict[str, Any]]) -> None:
    for group in [form, *(one["fields"] for one in every(form) if "fields" in one)]:
        labels = [one["label"].lower() for one in group]
        assert len(set(labels)) == len(labels), labels


def test_what_the_schema_requires_is_required(form: list[dict[str, Any]]) -> None:
    assert [one["name"] for one in form if one.get("required")] == ["id", "name", "openings"]
    assert {one["name"] for one in named(form, "openings")["item"]["fields"] if one.get("required")} == set(
        OPENING["required"]
    )


def test_choices_bear_the_words_of_the_vocabulary(form: list[dict[str, Any]]) -> None:
    for way, vocabulary in ((("openings", "kind"), "opening"), (("site", "region"), "region")):
        assert dict(named(form, *way)["choices"]) == schemas().words(vocabulary)
    assert dict(named(form, "site", "occupied")["choices"]) == schemas().words("answer")
    assert named(form, "site", "occupied")["ask"] == "answer"
    assert dict(named(form, "openings", "walls", "material")["choices"]) == schemas().words("wall-material")


def test_devices_are_those_of_the_library(form: list[dict[str, Any]], shipped_library: Library) -> None:
    chosen = named(form, "openings", "device", "class")
    assert chosen["choices"] == [[one.id, one.name] for one in shipped_library.of("device")]


@pytest.mark.parametrize(
    ("way", "expected"),
    [
        (("openings", "gap"), {"ask": "length", "units": ["mm", "in"], "high": 40, "far": 1000}),
        (("openings", "distance"), {"ask": "length", "units": ["m", "ft"], "high": 40}),
        (("openings", "step"), {"ask": "length", "units": ["mm", "in"], "high": 40, "signed": True}),
        (("openings", "floors"), {"ask": "number", "min": 0, "max": 10, "whole": True}),
        (("control_unit", "supply"), {"ask": "number", "above": 0, "max": 60, "unit": "V"}),
        (("site", "year_built"), {"ask": "number", "whole": True, "choices": [["unknown", "not known"]]}),
        (("openings", "passive_leaf"), {"ask": "answer", "kinds": ["double-door"]}),
        (("surveyed",), {"ask": "day"}),
        (("invented",), {"ask": "fixed", "value": True}),
        (("openings", "notes"), {"ask": "text", "area": True, "high": 1200, "extra": True}),
        (("openings", "walls"), {"ask": "list", "least": 0, "most": 30}),
    ],
)
def test_answers_are_bounded_as_the_schema_says(
    form: list[dict[str, Any]], way: tuple[str, ...], expected: dict[str, Any]
) -> None:
    assert named(form, *way).items() >= expected.items()


def test_kinds_that_a_field_concerns_are_kinds(form: list[dict[str, Any]]) -> None:
    for one in every(form):
        assert set(one.get("kinds", ())) <= set(schemas().words("opening")), one


def test_a_new_property_is_described_with_no_other_change(grown: Library) -> None:
    described = fields(grown)
    assert named(described, "openings", "ajar_angle") == {
        "name": "ajar_angle",
        "label": "Ajar angle",
        "help": "Angle at which it stands ajar.",
        "ask": "number",
        "min": 0,
        "max": 90,
    }
    assert "Ajar angle" in [one["label"] for _, one, _ in sheet_rows(named(described, "openings")["item"]["fields"])]


def test_a_new_length_offers_every_unit(grown: Library) -> None:
    assert named(fields(grown), "openings", "depth")["units"] == ["mm", "m", "in", "ft"]


def test_lengths_are_bounded_as_the_reader_bounds_them(form: list[dict[str, Any]]) -> None:
    lengths = {one["name"]: (one["units"][0], one["far"]) for one in every(form) if one["ask"] == "length"}
    assert lengths == dict(build._LENGTHS)


def test_the_sheet_has_a_row_for_each_question(form: list[dict[str, Any]]) -> None:
    single = [one["name"] for one in every(named(form, "openings")["item"]["fields"]) if one["name"] != "item"]
    rows = [one["name"] for _, one, _ in sheet_rows(named(form, "openings")["item"]["fields"])]
    assert set(rows) == set(single) - {"device", "material", "thickness", "no_codes"}
    choices = {one["name"]: words for _, one, words in sheet_rows(named(form, "openings")["item"]["fields"])}
    assert choices["gap"] == "mm or in"
    assert choices["fire_rated"] == "yes, no, not known"
    assert choices["walls"].endswith("; mm or in")
    headings = [heading for heading, _, _ in sheet_rows(form) if heading]
    assert headings == ["Site", "Panel", "House rules for this job"]


def test_the_block_of_data_holds_no_markup(grown: Library) -> None:
    block = str(survey_form(grown))
    assert "<" not in block
    assert "\u2028" not in block
    assert named(json.loads(block)["fields"], "openings", "odd")["help"] == "</script><b>\u2028"


def test_the_same_library_gives_the_same_bytes(shipped_library: Library) -> None:
    assert survey_form(shipped_library) == survey_form(shipped_library)


@given(of=surveys(most=2))
@draws(40)
def test_the_form_asks_what_a_plan_asks(form: list[dict[str, Any]], shipped_library: Library, of: Survey) -> None:
    """Every question of any plan stands in the form, at the kind of opening that it is about."""
    kinds = {one.id: one.kind for one in of.openings}
    groups = {"site": named(form, "site")["fields"], "control-unit": named(form, "control_unit")["fields"]}
    for question in make_plan(of, shipped_library, catalogue(), date(2026, 1, 31)).questions:
        listed = groups.get(question.about, named(form, "openings")["item"]["fields"])
        field = named(listed, question.field)
        assert "extra" not in field, question
        assert kinds.get(question.about, "") in field.get("kinds", [kinds.get(question.about, "")]), question


def test_the_site_begins_with_its_region_and_leaves_no_fact_of_it_to_chance(form: list[dict[str, Any]]) -> None:
    """The region decides what is asked and advised further; each fact of site and panel bears the mark *open*."""
    by_name = {one["name"]: one for one in form}
    assert by_name["site"]["fields"][0]["name"] == "region"
    for group, names in (
        ("site", ("region", "building", "listed", "consent")),
        ("control_unit", ("owner", "installer_access")),
    ):
        asked = [one["name"] for one in by_name[group]["fields"] if not one.get("extra")]
        assert set(names) <= set(asked)


def test_what_no_plan_could_ask_is_left_to_who_wants_to_tell_it(form: list[dict[str, Any]]) -> None:
    extra = {one["name"] for one in named(form, "openings")["item"]["fields"] if one.get("extra")}
    assert {"id", "spoken", "device", "notes"} <= extra
    assert not extra & {"gap", "play", "use", "fire_rated", "escape", "drill", "cable_area", "openings_a_day"}
    assert "extra" not in named(form, "site", "year_built")
