"""A survey comes out the same from every form of file; what is wrong is named with its place, and the rest is kept."""

from __future__ import annotations

import copy
import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from latchside.root import ROOT
from latchside.surveys.build import survey_of
from latchside.surveys.survey import Override, Wall
from latchside.surveys.template import csv_bytes
from latchside.surveys.xlsx_template import workbook

from ..long import tries
from .support import schemas
from .surveys import COLUMNS, DATA, FORMS, codes, places, put, read, surveys, written

KEYS = [
    "id",
    "name",
    "site",
    "control_unit",
    "rules",
    "openings",
    "units",
    "surveyed",
    "invented",
    "walls",
    "region",
    "kind",
]
CELLS = st.sampled_from(
    [
        None,
        "",
        " ",
        "id",
        "name",
        "site.region",
        "europe",
        "yes",
        "4 mm",
        "brick 4",
        "#",
        "=1",
        "'",
        "-1",
        5,
        0.5,
        "1,250",
        ";",
    ]
)


def changed(**openings: Any) -> dict[str, Any]:
    """The survey with its first opening changed."""
    data = copy.deepcopy(DATA)
    data["openings"][0] |= openings
    return data


# -- the same from every form ----------------------------------------------------------------------------------


@pytest.mark.parametrize("form", FORMS)
def test_reads_every_sort_of_field(form: str, tmp_path: Path) -> None:
    survey, findings = read(put(tmp_path, f"boat-shed.{form}", written(DATA, form)))
    assert findings == ()
    assert survey == survey_of(DATA)
    door, hatch = survey.openings
    assert (door.gap_mm, door.step_mm, door.height_m, door.fire_rated, door.floors) == (4.7625, -2, 2.1, False, 0)
    assert door.walls == (Wall("brick", 114.3), Wall("foil"))
    assert (door.hardware, door.rail_depth_mm, hatch.hardware) == (("panic-bar", "closer"), 38.1, ())
    assert door.override == Override("surface-contact", "It is there.")
    assert (hatch.walls, hatch.steel, hatch.gap_mm, hatch.fire_rated, hatch.side) == ((), "none", None, None, "")
    assert (survey.invented, survey.surveyed) == (True, date(2026, 1, 12))
    assert (survey.site.year_built, survey.site.occupied, survey.site.monitored) == (None, False, None)
    assert survey.control_unit.zones_in_use == ("Safe", "Hall")
    assert (survey.control_unit.sensitivity_dbm, survey.rules.cable_spare_m) == (-104, 2)


@settings(
    max_examples=tries(8, 60),
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(data=surveys())
def test_any_survey_is_the_same_from_every_form(data: dict[str, Any], tmp_path: Path) -> None:
    assert schemas().quick["job"].is_valid(data)
    expected = survey_of(data)
    for form in FORMS:
        assert read(put(tmp_path, f"any.{form}", written(data, form))) == (expected, ()), form


@pytest.mark.parametrize("path", sorted((ROOT / "content" / "jobs").glob("*.yaml")), ids=lambda path: path.stem)
@pytest.mark.parametrize("form", FORMS[1:])
def test_the_demo_jobs_are_the_same_from_every_form(path: Path, form: str, tmp_path: Path) -> None:
    from latchside.read.yaml_text import read_text

    data = read_text(path.read_text("utf-8"), path.name).value
    survey, findings = read(path)
    assert findings == ()
    assert read(put(tmp_path, f"{path.stem}.{form}", written(data, form))) == (survey, ())


# -- YAML and JSON ---------------------------------------------------------------------------------------------

YAML = """id: boat-shed
name: Boat shed
site:
  regin: europe
  occupied: maybe
openings:
  - id: shed-door
    place: Shed
    kind: hinged-dor
  - id: loft-hatch
    place: Loft
    kind: hatch
    gap: about 4 mm
  - id: gate
    place: Yard
    kind: gate
    gap:
"""


def test_bad_openings_are_named_and_the_good_ones_kept(tmp_path: Path) -> None:
    survey, findings = read(put(tmp_path, "boat-shed.yaml", YAML))
    assert survey
    assert [one.id for one in survey.openings] == ["gate"]
    assert places(findings) == [
        ("unknown-key", 4, 3), ("unknown-word", 5, 13), ("unknown-word", 9, 11), ("not-a-length", 13, 10),
    ]  # fmt: skip
    key, word, kind, length = findings
    assert 'Did you mean "region"?' in key.expected
    assert "counts as not said" in key.action
    assert "counts as not said" in word.action
    assert 'Did you mean "hinged-door"?' in kind.expected
    assert "kind of shed-door" in kind.found
    assert "left out of the plan" in kind.action
    assert "gap of loft-hatch" in length.found
    assert {one.level for one in findings} == {"error"}


def test_an_unknown_field_leaves_its_opening_out_and_takes_no_other_field_of_the_site(tmp_path: Path) -> None:
    data = changed(gapp="4 mm")
    data["site"]["colour"] = "red"
    survey, findings = read(put(tmp_path, "a.json", json.dumps(data, indent=1)))
    assert survey
    assert survey.site.region == "europe"
    assert [one.id for one in survey.openings] == ["loft-hatch"]
    assert codes(findings) == ["unknown-key", "unknown-key"]
    assert min(one.place.line for one in findings) > 5


@pytest.mark.parametrize("form", FORMS)
def test_one_run_says_all_that_is_wrong_with_an_opening(form: str, tmp_path: Path) -> None:
    """A wrong word does not hide a length that cannot be read: else the lead corrects the file twice."""
    data = changed(kind="shed-door", gap="about 4 mm", walls=[{"material": "brick", "thickness": "4 furlong"}])
    _, findings = read(put(tmp_path, f"a.{form}", written(data, form)))
    assert sorted(codes(findings)) == ["not-a-length", "not-a-length", "unknown-word"]


def test_a_second_opening_of_one_id_is_left_out(tmp_path: Path) -> None:
    data = copy.deepcopy(DATA)
    data["openings"][1]["id"] = "shed-door"
    for form in FORMS:
        survey, findings = read(put(tmp_path, f"a.{form}", written(data, form)))
        assert survey
        assert [one.place for one in survey.openings] == ["Shed"]
        assert codes(findings) == ["repeated-opening"], form


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"gap": "4 m"}, "out-of-range"), ({"gap": "4 furlong"}, "not-a-length"), ({"gap": "-1 mm"}, "not-a-length"),
        ({"floors": 99}, "out-of-range"), ({"notes": "a\u202eb"}, "hidden-sign"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("form", FORMS)
def test_what_cannot_be_meant_is_found_in_every_form(
    change: dict[str, Any], code: str, form: str, tmp_path: Path
) -> None:
    survey, findings = read(put(tmp_path, f"a.{form}", written(changed(**change), form)))
    assert survey
    assert [one.id for one in survey.openings] == ["loft-hatch"]
    assert codes(findings) == [code]


@pytest.mark.parametrize("form", FORMS)
def test_an_opening_without_an_id_gets_one_in_every_form(form: str, tmp_path: Path) -> None:
    """As the schema says of the field: left empty, it is made of place, side and kind."""
    openings = [{key: value for key, value in one.items() if key != "id"} for one in DATA["openings"]]
    survey, findings = read(put(tmp_path, f"a.{form}", written(DATA | {"openings": openings}, form)))
    assert findings == ()
    assert survey
    assert [one.id for one in survey.openings] == ["shed-lake-hinged-door", "loft-hatch"]


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("field", ["gap", "step", "width", "floors", "cable_area", "openings_a_day"])
@pytest.mark.parametrize("value", ["4 kg", "2.5 floors", "4 min"])
def test_a_wrong_unit_is_one_finding(value: str, field: str, form: str, tmp_path: Path) -> None:
    openings = [DATA["openings"][0] | {field: value}, DATA["openings"][1]]
    _, findings = read(put(tmp_path, f"a.{form}", written(DATA | {"openings": openings}, form)))
    assert len(findings) == 1
    assert f'"{value}"' in findings[0].found
    assert field in findings[0].found
    assert "give" not in findings[0].found


@pytest.mark.parametrize("value", ["4 min", "4 kg", "0.5", "2.5"])
@pytest.mark.parametrize("form", ["csv", "xlsx"])
def test_a_whole_number_that_is_none_is_one_finding(value: str, form: str, tmp_path: Path) -> None:
    """Four minutes are a time, and no number of months."""
    data = DATA | {"rules": {"service_months": value}}
    _, findings = read(put(tmp_path, f"a.{form}", written(data, form)))
    assert codes(findings) == ["not-a-number"]
    assert value in findings[0].found


def test_true_in_place_of_a_length_is_not_to_be_quoted(tmp_path: Path) -> None:
    _, findings = read(put(tmp_path, "a.yaml", written(changed(gap=True), "yaml")))
    assert codes(findings) == ["wrong-type"]
    assert "Quote" not in findings[0].action


def test_a_survey_without_id_and_name_is_read_under_the_name_of_its_file(tmp_path: Path) -> None:
    data = {key: value for key, value in DATA.items() if key not in ("id", "name")}
    survey, findings = read(put(tmp_path, "lake-house.json", json.dumps(data)))
    assert survey
    assert (survey.id, survey.name) == ("lake-house", "lake-house")
    assert codes(findings) == ["missing-key", "missing-key"]


@pytest.mark.parametrize(
    ("name", "content", "code"),
    [
        ("a.yaml", "", "empty-file"), ("a.yaml", " \n\n", "empty-file"), ("a.yaml", "# only\n", "empty-file"),
        ("a.yaml", "- a\n- b\n", "wrong-type"), ("a.yaml", "a: [", "broken-yaml"),
        ("a.yaml", "a: &b 1", "anchor-or-alias"), ("a.json", "{", "broken-json"),
        ("a.json", '{"a": NaN}', "broken-json"), ("a.json", '{"a": 1e999}', "broken-json"),
        ("a.json", "[" * 100_000, "broken-json"), ("a.json", "[1]", "wrong-type"), ("a.json", "null", "wrong-type"),
        ("a.json", f'{{"a": {"9" * 5000}}}', "broken-json"), ("a.yaml", b"id: \xe4", "not-utf-8"),
        ("a.yaml", b"i\x00d\x00", "not-utf-8"), ("a.yaml", b"\xff\xfei", "not-utf-8"),
        ("a.txt", "id: a", "file-ending"), ("a.yaml", b"#" * 5_000_001, "file-too-large"),
        ("a.csv", b"\xe4,\xf6\n", "not-utf-8"),
    ],
)  # fmt: skip
def test_a_file_that_is_no_survey_is_one_clear_finding(
    name: str, content: str | bytes, code: str, tmp_path: Path
) -> None:
    survey, findings = read(put(tmp_path, name, content))
    assert survey is None
    assert codes(findings) == [code]
    assert findings[0].expected
    assert findings[0].action


ANY = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(-5, 10**17), st.floats(allow_nan=False, allow_infinity=False))
    | st.sampled_from(["", " ", "yes", "4 mm", "hatch", "a", "none", "\ud800", "\x00", "9" * 3000]),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from([*KEYS, "x", ""]), inner, max_size=6),
    max_leaves=20,
)


@settings(max_examples=tries(25, 150), deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(top=st.dictionaries(st.sampled_from(KEYS), ANY, max_size=8), openings=st.lists(ANY, max_size=3))
def test_whatever_the_data_is_it_becomes_a_survey_or_findings(top: Any, openings: Any, tmp_path: Path) -> None:
    for data in (top, {**DATA, **top}, {**DATA, "openings": [*DATA["openings"], *openings]}):
        survey, findings = read(put(tmp_path, "a.json", json.dumps(data)))
        assert survey or findings
        assert survey is None or survey.openings
        assert "\n".join(f"{one.found} {one.expected}" for one in findings).encode("utf-8") or survey
    assert survey
    assert survey.openings[0].id == "shed-door"


@settings(max_examples=tries(25, 150), deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    above=st.lists(st.lists(CELLS, max_size=4), max_size=4),
    header=st.lists(st.sampled_from([*COLUMNS.opening, "x", ""]), max_size=8),
    below=st.lists(st.lists(CELLS, max_size=12), max_size=4),
    form=st.sampled_from(["csv", "xlsx"]),
)
def test_whatever_stands_in_a_sheet_it_becomes_a_survey_or_findings(
    above: Any, header: Any, below: Any, form: str, tmp_path: Path
) -> None:
    rows = [*above, ["id", "place", "kind", *header], ["good", "Hall", "gate"], *below]
    content = csv_bytes(rows) if form == "csv" else workbook(rows)
    survey, findings = read(put(tmp_path, f"a.{form}", content))
    assert survey or findings
    if "id" not in above and not any(row[:1] == ["id"] for row in above):
        assert survey
        assert survey.openings[0].id == "good"


def test_no_file_and_a_folder(tmp_path: Path) -> None:
    (tmp_path / "b.yaml").mkdir()
    for name in ("a.yaml", "b.yaml"):
        assert codes(read(tmp_path / name)[1]) == ["not-a-file"]


def test_utf_8_with_its_mark_and_utf_16_with_its_own_are_read(tmp_path: Path) -> None:
    text = json.dumps(changed(place="Zoë’s room"), ensure_ascii=False)
    for encoding in ("utf-8", "utf-8-sig", "utf-16"):
        survey, findings = read(put(tmp_path, "a.json", text.encode(encoding)))
        assert (survey and survey.openings[0].place, findings) == ("Zoë’s room", ())


def test_json_says_a_key_twice(tmp_path: Path) -> None:
    text = json.dumps(DATA)[:-1] + ', "id": "other"}'
    assert codes(read(put(tmp_path, "a.json", text))[1]) == ["duplicate-key"]


def test_blank_says_nothing(tmp_path: Path) -> None:
    data = changed(gap=None, walls=None)
    data["site"]["region"] = None
    survey, findings = read(put(tmp_path, "a.json", json.dumps(data)))
    assert findings == ()
    assert survey
    assert (survey.openings[0].gap_mm, survey.openings[0].walls, survey.site.region) == (None, None, None)


def test_imperial_bare_numbers() -> None:
    data = changed(gap=0.25, height=7, distance="30", walls=[{"material": "brick", "thickness": 4}], step=-0.5)
    door = survey_of({**data, "units": "imperial"}).openings[0]
    assert (door.gap_mm, door.height_m, door.distance_m, door.step_mm) == (6.35, 2.1336, 9.144, -12.7)
    assert door.walls == (Wall("brick", 101.6),)


def test_survey_of_says_where_it_cannot_read() -> None:
    with pytest.raises(ValueError, match=r"openings\.0\.gap: .*furlong"):
        survey_of(changed(gap="4 furlong"))
    with pytest.raises(ValueError, match="surveyed"):
        survey_of({**DATA, "surveyed": "2026-02-30"})


def test_text_is_one_line() -> None:
    assert survey_of(changed(notes="One\n  two\r\nthree ")).openings[0].notes == "One two three"


def test_many_findings_are_cut_short_and_many_openings_are_read_fast(tmp_path: Path) -> None:
    opening = DATA["openings"][0]
    many = [{**opening, "id": f"door-{n}", "kind": "dor" if n < 400 else "gate"} for n in range(2000)]
    survey, findings = read(put(tmp_path, "a.json", json.dumps({**DATA, "openings": many})))
    assert survey
    assert len(survey.openings) == 1600
    assert len(findings) == 301
    assert [one.code for one in findings].count("too-many-findings") == 1


def test_too_many_openings_are_refused_at_once(tmp_path: Path) -> None:
    many = [{**DATA["openings"][0], "id": f"door-{n}", "kind": "dor"} for n in range(2001)]
    survey, findings = read(put(tmp_path, "a.json", json.dumps({**DATA, "openings": many})))
    assert survey is None
    (finding,) = findings
    assert (finding.code, finding.found) == ("too-many-openings", "2,001 openings")
    assert "2,000" in finding.expected
    assert finding.action.endswith("Nothing was planned.")


def test_the_class_has_the_fields_of_the_schema() -> None:
    """Each field of the schema reaches the survey, in a field that has no other sender."""
    made = survey_of(DATA)
    renamed = {"class": "override", "reason": "override"}
    for column in COLUMNS.opening.values():
        if column.name == "no_codes":
            continue  # says of other fields that they are read
        last = renamed.get(column.path[-1], column.path[-1])
        assert any(name == last or name.startswith(f"{last}_") for name in vars(made.openings[0])), column.name
    parts: dict[str, object] = {"site": made.site, "control_unit": made.control_unit, "rules": made.rules}
    for column in COLUMNS.above.values():
        if column.name == "no_codes":
            continue
        part = parts.get(column.path[0], made)
        stem = column.path[-1].removesuffix("_current")
        assert any(name == stem or name.startswith(f"{stem}_") for name in vars(part)), column.name


def test_reading_asks_for_no_slow_module() -> None:
    import subprocess
    import sys

    path = ROOT / "content" / "jobs" / "corner-bakery.yaml"
    code = (
        "import sys, pathlib; from latchside.schemas import load_schemas;"
        "from latchside.surveys.read import read_survey;"
        f"read_survey(pathlib.Path({str(path)!r}), load_schemas(pathlib.Path({str(ROOT / 'schema')!r})));"
        "print(sorted({name.split('.')[0] for name in sys.modules} & {'pint', 'openpyxl', 'jsonschema'}))"
    )
    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert shown.stdout.strip() == "[]"
