"""What the form of a survey makes of answers, under node: what is stored, what is not, what is open, what is next."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from ..node import Node, pages_scripts

CALL = """async ([folder, name, ...given]) => {
  const names = ["model", "edits", "standing", "state", "findings", "layout", "file"];
  const modules = await Promise.all(names.map((one) => import(`${folder}/assets/js/survey/${one}.js`)));
  const known = Object.assign({}, ...modules);
  const frozen = (value) => {
    if (value !== null && typeof value === "object") Object.values(Object.freeze(value)).forEach(frozen);
    return value;
  };
  const survey = (one) => known.surveyOf(one.survey, new Map(one.rows.map((row) => [row.key, row])));
  const edits = (list) => new Map(list.map((edit) => [known.idOf(edit), edit]));
  const does = {
    ...known,
    findings: (fields, one) => Object.fromEntries(known.findingsOf(fields, survey(one))),
    standing: (form, field, path) => known.standingOf({ ...form, edits: edits(form.edits) }, field, path),
    kept: (state) => known.keptNow({ ...state, edits: edits(state.edits) }),
    loses: (state) => known.wouldLose({ ...state, edits: edits(state.edits) }),
    cutEdits: (list, at, index) => [...known.withoutItem(edits(list), at, index).values()],
    whole: (one, list) => known.withEdits(survey(one), edits(list)),
    next: (fields, row, here, round) =>
      known.nextOpen(known.openingParts(fields), known.openIn(fields, row), here, round)?.way ?? null,
    waiting: (fields, one, list) => known.notStored(fields, survey(one), edits(list)),
    nextWithOpen: (fields, one, opening) => known.nextWithOpen({ fields, survey: survey(one), opening })?.key ?? null,
  };
  return does[name](...frozen(given)) ?? null;
}"""
Call = Callable[..., Any]

TEXT = {"help": "", "ask": "text", "low": 0, "high": 60}
PLACE = {**TEXT, "name": "place", "label": "Place", "required": True, "low": 1}
NOTES = {**TEXT, "name": "notes", "label": "Notes", "extra": True}
SIDE = {**TEXT, "name": "side", "label": "Side"}
GAP = {"name": "gap", "label": "Gap", "help": "", "ask": "length", "units": ["mm", "in"], "high": 40}
WALL = {"name": "item", "label": "Item", "help": "", "ask": "group", "fields": [{**GAP, "name": "thickness"}]}
WALLS = {"name": "walls", "label": "Walls", "help": "", "ask": "list", "item": WALL, "least": 0}
KIND = {"name": "kind", "label": "Kind", "help": "", "ask": "choice", "choices": [["gate", "gate"], ["hatch", "hatch"]]}
INNER = [PLACE, SIDE, KIND, GAP, WALLS, NOTES]
FIELDS = [
    {**PLACE, "name": "name", "label": "Name"},
    {"name": "openings", "label": "Openings", "help": "", "ask": "list", "item": {**WALL, "fields": INNER}, "least": 1},
]


@pytest.fixture(scope="module")
def call(node: Node, tmp_path_factory: pytest.TempPathFactory) -> Call:
    """Call a function of the form with values; none of them can be changed."""
    folder = pages_scripts(tmp_path_factory.mktemp("form"))
    return lambda name, *given: node.evaluate(CALL, [folder.as_uri(), name, *given])


def opening(key: str, typed: dict[str, str] | None = None, **data: Any) -> dict[str, Any]:
    return {"key": key, "survey": "s", "data": data, "typed": typed or {}}


def survey(*rows: dict[str, Any]) -> dict[str, Any]:
    order = [row["key"] for row in rows]
    head = {"order": order, "gone": [], "named": {}, "changed": 2, "filed": 1}
    return {"survey": {"key": "s", "data": {"name": "Elm"}, "typed": {}, **head}, "rows": list(rows)}


def edit(opening: str | None, field: dict[str, Any], *path: str | int, **more: Any) -> dict[str, Any]:
    return {"survey": "s", "opening": opening, "field": field, "path": list(path), "state": "new", "unit": "mm", **more}


def state(edits: list[dict[str, Any]], **more: Any) -> dict[str, Any]:
    kept = {"kept": True, "why": "", "firm": False}
    return {"edits": edits, "fault": "", "running": 0, "said": "", "at": "", "kept": kept, **more}


TYPED = {"walls.0.thickness": "abt 1", "walls.1.thickness": "abt 2", "walls.2.thickness": "abt 3", "gap": "abt"}


def test_one_out_of_a_list_takes_what_was_typed_for_it_along(call: Call) -> None:
    row = opening("a", TYPED, walls=[{"thickness": "1 mm"}, {"thickness": "2 mm"}, {"thickness": "3 mm"}])
    made = call("cutOut", row, ["walls"], 1)
    assert made["data"]["walls"] == [{"thickness": "1 mm"}, {"thickness": "3 mm"}]
    assert made["typed"] == {"walls.0.thickness": "abt 1", "walls.1.thickness": "abt 3", "gap": "abt"}
    left = call(
        "cutEdits",
        [edit("a", GAP, "walls", index, "thickness", text=str(index)) for index in range(3)]
        + [edit("b", GAP, "walls", 2, "thickness", text="other")],
        {"survey": "s", "opening": "a", "path": ["walls"]},
        1,
    )
    assert [(one["opening"], one["path"], one["text"]) for one in left] == [
        ("a", ["walls", 0, "thickness"], "0"),
        ("a", ["walls", 1, "thickness"], "2"),
        ("b", ["walls", 2, "thickness"], "other"),
    ]


def test_a_group_that_is_left_with_nothing_goes_and_a_place_in_a_list_stays(call: Call) -> None:
    assert call("put", {"device": {"class": "x"}}, ["device", "class"], None) == {"device": {"class": None}}
    row = opening("a", device={"reason": "x"}, walls=[{"thickness": "1 mm"}])
    cleared = call("answered", {**row, "data": {"walls": [{"thickness": "1 mm"}]}}, ["walls", 0, "thickness"], "2 mm")
    assert cleared["data"] == {"walls": [{"thickness": "2 mm"}]}
    assert call("answered", row, ["walls", 4, "thickness"], "9 mm")["data"]["walls"] == [
        {"thickness": "1 mm"},
        {"thickness": "9 mm"},
    ], "the list was shortened in another tab: nothing lies between"


def test_what_does_not_read_is_kept_in_place_of_the_answer(call: Call) -> None:
    made = call("applied", opening("a", gap="4 mm"), edit("a", GAP, "gap", text="abt 4"))
    assert made["data"] == {}
    assert made["typed"] == {"gap": "abt 4"}
    assert call("applied", made, edit("a", GAP, "gap", text="4,5"))["data"] == {"gap": "4.5 mm"}


@pytest.mark.parametrize(
    ("edits", "more", "sort"),
    [
        ([], {}, "kept"),
        ([], {"at": "16:30"}, "saved"),
        ([{"state": "new"}], {"at": "16:30"}, "saving"),
        ([{"state": "storing"}], {"at": "16:30"}, "saving"),
        ([{"state": "stored"}], {"at": "16:30"}, "saved"),
        ([{"state": "failed", "fault": "Full."}, {"state": "new"}], {"at": "16:30"}, "failed"),
        ([{"state": "code"}], {"at": "16:30"}, "code"),
        ([], {"at": "16:30", "running": 1}, "saving"),
        ([], {"at": "16:30", "fault": "Full."}, "failed"),
        ([], {"at": "16:30", "kept": {"kept": False, "why": "x", "firm": False}}, "memory"),
    ],
)
def test_what_is_not_stored_never_shows_as_kept(
    call: Call, edits: list[dict[str, Any]], more: dict[str, Any], sort: str
) -> None:
    listed = [edit(f"o{index}", GAP, "gap", text="4", **one) for index, one in enumerate(edits)]
    assert call("kept", state(listed, **more))["sort"] == sort
    assert call("loses", {**state(listed, **more), "survey": None, "all": []}) == any(
        one["state"] != "stored" for one in edits
    )


def test_a_box_shows_what_is_typed_and_its_question_stays_open_until_that_is_stored(call: Call) -> None:
    form: dict[str, Any] = {"survey": "s", "opening": "a", "row": opening("a"), "units": {}, "imperial": False}
    typing = call("standing", {**form, "edits": [edit("a", GAP, "gap", text="4,")]}, GAP, ["gap"])
    assert (typing["text"], typing["mark"], typing["fault"]) == ("4,", "open", "")
    failed = call("standing", {**form, "edits": [edit("a", GAP, "gap", text="4", state="failed")]}, GAP, ["gap"])
    assert (failed["text"], failed["mark"]) == ("4", "open")
    assert "Not stored" in failed["fault"]
    stored = {**form, "row": opening("a", gap="4.5 mm")}
    there = call("standing", {**stored, "edits": [edit("a", GAP, "gap", text="4,5", state="stored")]}, GAP, ["gap"])
    assert (there["text"], there["mark"]) == ("4,5", ""), "who is still in the box sees what was typed"
    assert call("standing", {**stored, "edits": []}, GAP, ["gap"])["text"] == "4.5"
    wrong = call("standing", {**form, "row": opening("a", {"gap": "abt"}), "edits": []}, GAP, ["gap"])
    assert (wrong["text"], wrong["mark"]) == ("abt", "open")
    assert "That is no length" in wrong["fault"]


def test_what_looks_like_a_code_goes_nowhere_before_somebody_says_that_it_is_none(call: Call) -> None:
    typed = edit("a", NOTES, "notes", text="code 4711")
    assert call("needsWord", typed, opening("a"))
    assert not call("needsWord", {**typed, "isNoCode": True}, opening("a"))
    assert not call("needsWord", typed, opening("a", notes="code 4711", no_codes=["notes"])), "it was said before"
    one = survey(opening("a", place="Hall", kind="gate"))
    paper = call("whole", one, [{**typed, "state": "code"}, edit("a", GAP, "gap", text="5")])
    assert paper["openings"][0]["data"] == {"place": "Hall", "kind": "gate", "gap": "5 mm"}
    (out,) = call("waiting", FIELDS, one, [{**typed, "state": "code"}])
    assert out.startswith("Hall: gate: “code ")
    assert "4711" not in out
    assert call("waiting", FIELDS, one, [edit("a", KIND, "kind", value="hatch", state="failed")]) == [
        "Hall: gate: “hatch”"
    ]
    said = call("applied", opening("a"), {**typed, "isNoCode": True})
    assert said["data"] == {"notes": "code 4711", "no_codes": ["notes"]}
    assert "no_codes" not in call("applied", said, edit("a", NOTES, "notes", text="Nothing"))["data"]


def test_findings_stand_by_the_opening_that_they_are_about(call: Call) -> None:
    answered: dict[str, Any] = {"side": "rear", "kind": "gate", "gap": "4 mm"}
    found = call(
        "findings",
        FIELDS,
        survey(
            opening("a", place="Hall", **answered),
            opening("b", place="Hall", **answered, walls=[]),
            opening("c", kind="hatch"),
        ),
    )
    assert found[""] == []
    assert found["a"] == [
        {"kind": "open", "words": "1 not answered: walls"},
        {"kind": "alike", "words": "place, side and kind as another: give it a zone name"},
    ]
    assert found["b"][0] == {"kind": "open", "words": "all answered"}
    assert {"kind": "hindrance", "words": "hatch, Place is missing"} in found["c"]
    (none,) = call("findings", FIELDS, survey())[""]
    assert none == {"kind": "hindrance", "words": "There is no opening yet"}


def test_the_way_leads_from_the_question_at_hand_to_the_next_open_one(call: Call) -> None:
    row = opening("a", side="rear", kind="gate")
    assert call("next", INNER, row, "", True) == "place"
    assert call("next", INNER, row, "place", True) == "gap"
    assert call("next", INNER, row, "gap", True) == "walls"
    assert call("next", INNER, row, "walls.0.thickness", True) == "place"
    assert call("next", INNER, row, "walls", False) is None
    assert call("next", INNER, row, "notes", True) == "place"


def test_what_is_told_in_one_way_is_not_asked_in_the_other(call: Call) -> None:
    gauge: dict[str, Any] = {**GAP, "name": "gauge", "or": "area"}
    area: dict[str, Any] = {**GAP, "name": "area", "or": "gauge"}

    def left(**told: Any) -> list[str]:
        found = call("unanswered", [gauge, area, {**PLACE}], opening("a", place="A", **told))
        return [".".join(one["path"]) for one in found]

    assert left() == ["gauge"], "one question, though it has two boxes"
    assert left(gauge="1 mm") == left(area="1 mm") == []
    assert not call("concerns", area, {"gauge": "1 mm"})
    assert call("concerns", area, {"gauge": "1 mm", "area": "2 mm"}), "what a file tells twice is shown twice"


def test_the_way_leads_to_the_openings_that_follow_and_round(call: Call) -> None:
    whole: dict[str, Any] = {"side": "rear", "kind": "gate", "gap": "4 mm", "walls": []}
    one = survey(opening("a", place="A"), opening("b", place="B", **whole), opening("c", place="C"))
    assert call("nextWithOpen", FIELDS, one, "a") == "c"
    assert call("nextWithOpen", FIELDS, one, "c") == "a"
    assert call("nextWithOpen", FIELDS, one, "") == "a"
    assert call("nextWithOpen", FIELDS, survey(opening("b", place="B", **whole)), "") is None


def test_openings_move_go_and_come_back_to_where_they_stood(call: Call) -> None:
    row = survey(opening("a"), opening("b"), opening("c"))["survey"]
    assert call("moved", row, "a", 1)["order"] == ["b", "a", "c"]
    assert call("moved", row, "c", -1)["order"] == ["a", "c", "b"]
    assert call("moved", row, "c", 1)["order"] == ["a", "b", "c"]
    assert call("withOpening", row, "d", "a")["order"] == ["a", "d", "b", "c"]
    gone = call("takenAway", call("takenAway", row, "a"), "c")
    assert gone["order"] == ["b"]
    back = call("putBack", call("putBack", gone))
    assert back["order"] == ["a", "b", "c"]
    assert back["gone"] == []
