"""The schemas are sound, say what every key is for, and every validator reads them alike."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit
from urllib.request import url2pathname

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator
from referencing import Registry, Resource
from referencing.jsonschema import DRAFT202012

from latchside.kinds import KINDS, Kind
from latchside.read.tree import RawRecord, read_project
from latchside.read.yaml_text import Document
from latchside.root import ROOT
from latchside.schemas.validate import schema_findings

from ..each import each
from .support import BASE, schemas

FILES = sorted((ROOT / "schema").glob("*.json"))
NAMES = [path.name for path in FILES]


def document(name: str) -> dict[str, Any]:
    return schemas().documents[name]


def below(schema: Any, way: str = "") -> Iterator[tuple[str, dict[str, Any]]]:
    """Every mapping in a schema, with the way to it. Starters are records, not schemas."""
    if isinstance(schema, dict):
        yield way, schema
        for key, value in schema.items():
            if not key.startswith("x-"):
                yield from below(value, f"{way}/{key}")
    elif isinstance(schema, list):
        for index, value in enumerate(schema):
            yield from below(value, f"{way}/{index}")


def followed(schema: dict[str, Any], name: str) -> dict[str, Any]:
    """A schema with its reference followed; what stands beside the reference wins."""
    while "$ref" in schema:
        file, _, pointer = schema["$ref"].partition("#")
        name = file or name
        target: Any = document(name)
        for part in pointer.strip("/").split("/"):
            target = target[part] if part else target
        schema = {**target, **{key: value for key, value in schema.items() if key != "$ref"}}
    return schema


# -- the schemas themselves -----------------------------------------------------------------------------------


def test_a_schema_for_each_kind_and_two_shared() -> None:
    shared = {"common.schema.json", "vocabulary.schema.json"}
    # what a checklist page saves and what the plan command writes: no records
    written = {"visit.schema.json", "plan.schema.json"}
    assert set(NAMES) == {kind.schema for kind in KINDS.values()} | shared | written


@each("name", NAMES)
def test_is_a_draft_2020_12_schema(name: str) -> None:
    schema = document(name)
    Draft202012Validator.check_schema(schema)
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert schema["$id"] == name


@each("name", NAMES)
def test_every_property_says_what_it_is_for(name: str) -> None:
    silent = [
        f"{way}/properties/{key}"
        for way, schema in below(document(name))
        if way.rpartition("/")[2] != "properties"
        for key, about in schema.get("properties", {}).items()
        if not followed(about, name).get("description")
    ]
    assert silent == []


@each("name", NAMES)
def test_words_shown_are_those_of_the_list(name: str) -> None:
    for way, schema in below(document(name)):
        if "x-words" in schema:
            assert list(schema["x-words"]) == schema["enum"], way
            assert all(schema["x-words"].values()), way
            assert len(set(schema["x-words"].values())) == len(schema["enum"]), way
        for mark in ("x-cautions", "x-minutes", "x-touch"):
            if mark in schema:
                assert list(schema[mark]) == schema["enum"], way
        for mark in ("x-dimension", "x-source"):
            assert set(schema.get(mark, ())) <= set(schema.get("enum", ())), way
        if "enum" in schema:
            assert len(set(schema["enum"])) == len(schema["enum"]), way


def test_every_value_name_has_a_dimension_that_some_unit_has() -> None:
    names = schemas().dimensions("value-name")
    assert set(names) == set(schemas().words("value-name"))
    assert set(names.values()) <= set(schemas().dimensions("unit").values())


def test_cautions_of_hazards_are_records() -> None:
    hazards = document("vocabulary.schema.json")["$defs"]["hazard-verb"]["x-cautions"]
    for cautions in hazards.values():
        assert cautions
        for id_ in cautions:
            assert (ROOT / KINDS["caution"].folder / f"{id_}.yaml").is_file(), id_


@each("name", NAMES)
def test_marks_for_the_library_are_known(name: str) -> None:
    for way, schema in below(document(name)):
        assert schema.get("x-text", "prose") in ("prose", "line"), way
        assert schema.get("x-ref", "step") in (*KINDS, "step", "drawing"), way


@each("kind", KINDS.values(), ids=lambda kind: kind.id)
def test_no_key_is_passed_over(kind: Kind) -> None:
    """Every mapping is either closed or says what its further keys hold, so that a mistyped key is found."""
    for way, schema in below(document(kind.schema)):
        if schema.get("type") == "object" and way.rpartition("/")[2] != "properties":
            closed = schema.get("additionalProperties")
            # an answer of a figure may be a mapping of any names: its figure declares them
            assert closed is False or isinstance(closed, dict) or "/examples/" in way, way


# -- validators ----------------------------------------------------------------------------------------------


@cache
def records() -> tuple[RawRecord, ...]:
    found = (*read_project(BASE).records, *read_project(ROOT).records)
    assert all(raw.value for raw in found)
    return found


@cache
def exact(kind: str) -> Any:
    return schemas().exact(KINDS[kind])


def from_file(uri: str) -> Resource[Any]:
    path = Path(url2pathname(urlsplit(uri).path))
    return DRAFT202012.create_resource(json.loads(path.read_text("utf-8")))


@cache
def as_an_editor_would(schema: Path) -> Any:
    """A stock validator that knows nothing but the schema's address and follows relative references from there."""
    registry: Any = Registry(retrieve=from_file)  # type: ignore[call-arg]
    return Draft202012Validator({"$ref": schema.as_uri()}, registry=registry)


@each("raw", records, ids=lambda raw: raw.file)
def test_record_fits_in_every_validator(raw: RawRecord) -> None:
    assert schemas().quick[raw.kind.id].is_valid(raw.value)
    assert [error.message for error in exact(raw.kind.id).iter_errors(raw.value)] == []


@pytest.mark.parametrize("base", [BASE, ROOT], ids=["base", "shipped"])
def test_first_line_names_the_schema(base: Path) -> None:
    """An editor finds the schema by this line alone, so it has to be there and to lead to the right one."""
    for raw in read_project(base).records:
        path = base / raw.file
        first = path.read_text("utf-8").split("\n", 1)[0]
        mark = "# yaml-language-server: $schema="
        assert first.startswith(mark), raw.file
        named = first.removeprefix(mark)
        assert named.startswith("../"), raw.file
        assert (path.parent / named).resolve() == ROOT / "schema" / raw.kind.schema, raw.file


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.id)
def test_an_editor_finds_every_schema(kind: Kind) -> None:
    """By its file's address and relative references alone, and finds nothing wrong with a record that is right."""
    schema = as_an_editor_would(ROOT / "schema" / kind.schema)
    fitting = [raw for raw in records() if raw.kind is kind]
    for raw in (fitting[0], fitting[-1]):  # one made up, one shipped
        assert [error.message for error in schema.iter_errors(raw.value)] == [], raw.file


def test_an_editor_sees_what_is_wrong() -> None:
    """The references really are followed: a wrong word deep inside is refused, not skipped."""
    raw = next(raw for raw in records() if raw.file == "content/devices/pane-contact.yaml")
    value = copy.deepcopy(raw.value)
    value["values"]["reach"]["unit"] = "mmm"
    assert not as_an_editor_would(ROOT / "schema" / raw.kind.schema).is_valid(value)


ODD = st.sampled_from(
    [
        None, True, False, 0, 1, -1, 1.0, 0.5, 10**12, "", " ", "none", "x", "NO", "a-b", "a--b", "Á", "not yet",
        [], {}, ["x"], {"x": 1},
    ]
)  # fmt: skip
NUMBERS = st.integers(-300, 300) | st.floats(-1e6, 1e6)
ANYTHING = ODD | NUMBERS | st.text(max_size=8) | st.text("a", min_size=88, max_size=250)


def ways(value: Any, way: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    yield way
    if isinstance(value, dict):
        for key, under in value.items():
            yield from ways(under, (*way, key))
    elif isinstance(value, list):
        for index, under in enumerate(value):
            yield from ways(under, (*way, index))


@st.composite
def spoiled(draw: st.DrawFn) -> tuple[RawRecord, Any]:
    """A record with one to three small changes somewhere in it."""
    raw = draw(st.sampled_from(records()))
    value = copy.deepcopy(raw.value)
    for _ in range(draw(st.integers(1, 3))):
        *way, last = draw(st.sampled_from([way for way in ways(value) if way]))
        holder: Any = value
        for step in way:
            holder = holder[step]  # a key of a mapping or a place in a list
        how = draw(st.sampled_from(["replace", "delete", "double", "add"]))
        if how == "replace":
            holder[last] = copy.deepcopy(draw(ANYTHING))
        elif how == "delete":
            del holder[last]
        elif isinstance(holder, list) and isinstance(last, int):
            holder.append(copy.deepcopy(holder[last] if how == "double" else draw(ANYTHING)))
        else:
            holder[f"{last}_2" if how == "double" else draw(st.text(max_size=6))] = copy.deepcopy(draw(ANYTHING))
        if not value:
            break
    return raw, value


def texts(value: Any) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for key, under in value.items():
            yield from (key, *texts(under))
    elif isinstance(value, list):
        for under in value:
            yield from texts(under)


@given(spoiled())
def test_validators_agree(example: tuple[RawRecord, Any]) -> None:
    """But for a text that ends in a line break: Python's `$` lets that pass, that of ECMA 262 does not."""
    raw, value = example
    if not any(text.endswith("\n") for text in texts(value)):
        assert schemas().quick[raw.kind.id].is_valid(value) == exact(raw.kind.id).is_valid(value)


@given(spoiled())
def test_every_misfit_is_said(example: tuple[RawRecord, Any]) -> None:
    """What the quick validator refuses has a finding: nothing is refused, or let pass, in silence."""
    raw, value = example
    spoilt = RawRecord(raw.kind, raw.file, raw.stem, Document(value=value))
    found = schema_findings(spoilt, schemas())
    assert bool(found) == (not schemas().quick[raw.kind.id].is_valid(value))
    for one in found:
        assert one.found
        assert one.action
        assert one.expected.strip(" .")


@pytest.mark.parametrize("end", ["\n", "\r", " ", "\u2028"], ids=["lf", "cr", "space", "ls"])
def test_an_id_ends_with_itself(end: str) -> None:
    raw = next(raw for raw in records() if raw.file == "shared/terms/leaf.yaml")
    spoilt = RawRecord(raw.kind, raw.file, raw.stem, Document(value={**raw.value, "id": f"leaf{end}"}))
    assert [one.code for one in schema_findings(spoilt, schemas())] == ["wrong-form"]


# -- shapes --------------------------------------------------------------------------------------------------


def test_shape_finds_text_and_references_through_choices() -> None:
    """A list of ids or the word none; a group of steps or a draw: the shape looks into each."""
    shape = schemas().shapes["procedure"]
    record = {
        "summary": "s",
        "safety": ["glass"],
        "tools": "none",
        "steps": [
            {"title": "t", "do": [{"do": "d", "only": ["x"], "measure": {"expect": {"condition": "c"}}}]},
            {"draw": "y"},
        ],
        "prove": [{"do": "p", "drawing": "z"}],
        "if_it_fails": [{"when": "w", "fault": "f"}],
    }  # fmt: skip
    assert [text.text for text in shape.texts(record)] == ["s", "t", "d", "c", "p", "w"]
    assert [(one.kind, one.id) for one in shape.references(record)] == [
        ("caution", "glass"), ("device", "x"), ("procedure", "y"), ("drawing", "z"), ("fault", "f"),
    ]  # fmt: skip


def test_shape_of_a_device_sees_the_procedures_of_each_stage() -> None:
    shape = schemas().shapes["device"]
    found = list(shape.references({"procedures": {"fix": ["a", "b"], "wire": {"none": "c"}}}))
    assert [(one.path, one.id, one.kind) for one in found] == [
        (("procedures", "fix", 0), "a", "procedure"),
        (("procedures", "fix", 1), "b", "procedure"),
    ]


def test_shape_of_a_table_sees_its_cells() -> None:
    shape = schemas().shapes["table"]
    assert [one.path for one in shape.texts({"rows": [{"cells": {"a": "x", "b": 2}}]})] == [("rows", 0, "cells", "a")]
