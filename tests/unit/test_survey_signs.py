"""Signs that cannot be seen in a survey: those without meaning are dropped, the others are said at their place."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.surveys.json_places import json_places

from .surveys import codes, put, read

EMPTY = ("\u200b", "\ufeff", "\u00ad", "\u2060", "\u200e", "\u200f")
TURNING = "\u202e"


def survey(place: str = "Hall", kind: str = "hatch", name: str = "Oak House") -> dict[str, Any]:
    openings = [{"id": "b", "place": place, "kind": kind}, {"id": "c", "place": "Loft", "kind": "hatch"}]
    return {"id": "a", "name": name, "openings": openings}


@pytest.mark.parametrize("sign", EMPTY)
def test_signs_without_width_do_no_harm(sign: str, tmp_path: Path) -> None:
    data = survey(f"Ha{sign}ll", name=f"Oak{sign} House")
    sheet = f"id,a\nname,Oak\nid,pla{sign}ce,kind\nb,Ha{sign}ll,hat{sign}ch\n"
    for name, text in (("a.json", json.dumps(data)), ("b.csv", sheet)):
        made, findings = read(put(tmp_path, name, text))
        assert findings == (), name
        assert made is not None
        assert (made.openings[0].place, made.openings[0].kind) == ("Hall", "hatch")


@pytest.mark.parametrize("name", ["Oak House", "Oak \U0001f600 House", "Oak\x7f House"])
@pytest.mark.parametrize("plain", [True, False], ids=["escaped", "as they are"])
def test_a_sign_that_turns_the_writing_is_said_where_it_stands(name: str, plain: bool, tmp_path: Path) -> None:
    """Also beside signs that a reader of YAML does not take."""
    text = json.dumps(survey(f"Ha{TURNING}ll", name=name), indent=1, ensure_ascii=plain)
    made, findings = read(put(tmp_path, "a.json", text))
    (found,) = [one for one in findings if "U+202E" in one.found]
    line = next(number for number, one in enumerate(text.splitlines(), 1) if '"place": "Ha' in one)
    assert (found.code, found.place.line, found.place.column) == ("hidden-sign", line, 13)
    assert "place of b" in found.found
    assert made is not None
    assert [one.id for one in made.openings] == ["c"]


def test_a_key_that_stands_there_twice_is_said_where_it_stands(tmp_path: Path) -> None:
    text = json.dumps(survey(name="Oak \U0001f600"))[:-1] + ',\n "id": "other"}'
    findings = read(put(tmp_path, "a.json", text))[1]
    assert [(one.code, one.place) for one in findings] == [("duplicate-key", (2, 2))]


def test_nothing_in_yaml_is_no_name(tmp_path: Path) -> None:
    text = (
        "id: a\nname: Oak House\nopenings:\n  - {id: b, place: ~, kind: hatch}\n  - {id: c, place: Loft, kind: hatch}\n"
    )
    made, findings = read(put(tmp_path, "a.yaml", text))
    assert codes(findings) == ["missing-key"]
    assert made is not None
    assert [one.id for one in made.openings] == ["c"]


VALUES = st.recursive(
    st.text(max_size=8) | st.integers(-99, 99) | st.booleans() | st.none() | st.floats(allow_nan=False, width=16),
    lambda below: st.lists(below, max_size=3) | st.dictionaries(st.text(max_size=4), below, max_size=3),
    max_leaves=12,
)


@given(data=VALUES, plain=st.booleans(), indent=st.sampled_from([None, 0, 2]))
def test_every_value_of_json_is_found_at_its_place(data: Any, plain: bool, indent: int | None) -> None:
    """Read again from its place, each value is itself."""
    text = json.dumps(data, ensure_ascii=plain, indent=indent)
    found = json_places(text)
    lines = text.split("\n")

    def look(value: Any, path: tuple[Any, ...]) -> int:
        place = found.values[path]
        rest = "\n".join([lines[place.line - 1][place.column - 1 :], *lines[place.line :]])
        assert json.JSONDecoder().raw_decode(rest)[0] == value
        inside = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
        return 1 + sum(look(below, (*path, key)) for key, below in inside)

    assert look(data, ()) == len(found.values)
    assert found.twice == []
