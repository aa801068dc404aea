"""What a guided run does with an answer, under node: stored runs, doubts, steps answered anew, readings."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from latchside.library import Library
from latchside.pages.fault_data import problem_data
from latchside.pages.fault_plan import plan_of

from ..node import Node, pages_scripts

RUN = """
import * as state from "./assets/js/fault/state.js";
import * as reading from "./assets/js/fault/reading.js";
import { standing } from "./assets/js/fault/steps.js";
export const does = {
  ...state,
  readOf: reading.readOf,
  expectedIn: reading.expectedIn,
  opened: (kept, listed, problem) => state.opened(kept, listed, () => problem),
  after: (problem, events) => standing(problem, events),
};
"""
CALL = "async ([script, name, given]) => (await import(script)).does[name](...given) ?? null"
Call = Callable[..., Any]


@pytest.fixture(scope="module")
def call(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Call]:
    """Call a function of the run with values, under node."""
    folder = pages_scripts(tmp_path_factory.mktemp("run"))
    stub = "globalThis.document = {createTreeWalker: () => ({}), createComment: () => ({})};\n"  # what lit-html asks
    (folder / "stub.js").write_text(stub, "utf-8")
    (folder / "run.js").write_text(f'import "./stub.js";{RUN}', "utf-8")

    node = Node()  # one of its own, for the stub
    yield lambda name, *given: node.evaluate(CALL, [(folder / "run.js").as_uri(), name, given])
    node.close()


@pytest.fixture(scope="module")
def problem(shipped_library: Library) -> Any:
    """The problem of a zone that shows open, for a recessed contact."""
    fault = shipped_library.records["fault"]["shows-open-when-shut"]
    return json.loads(
        json.dumps(problem_data(plan_of(shipped_library, fault, "recessed-contact").problem), default=dict)
    )


def check(id_: str, result: str, **more: Any) -> dict[str, Any]:
    return {"do": "check", "id": id_, "result": result, **more}


WITHIN = check("gap-against-record", "within")
OPEN = check("loop-at-its-end", "open-value")
IN_VAIN = {"do": "mend", "id": "reed-broken", "gone": False}


def test_a_run_that_was_stored_before_readings_were_kept_opens(call: Call, problem: Any) -> None:
    stored = {"device": "recessed-contact", "events": [WITHIN, {**OPEN, "visit": "v", "entries": ["e"]}]}
    kept = call("opened", stored, ["recessed-contact"], problem)
    assert kept == {**stored, "typed": {}}
    assert call("after", problem, kept["events"])["kind"] != "end"


@pytest.mark.parametrize(
    "stored",
    [None, 7, {"device": "gone", "events": [WITHIN]}, {"device": None, "events": "x"}, {"events": [{"do": 3}]}],
)
def test_what_is_stored_and_cannot_be_played_begins_anew(call: Call, problem: Any, stored: Any) -> None:
    assert call("opened", stored, ["recessed-contact"], problem) == {"device": None, "events": [], "typed": {}}


@pytest.mark.parametrize(
    ("reads", "read", "doubt"),
    [
        ("inside", None, "unread"),  # nothing reads right that nobody read
        ("outside", None, None),
        (None, None, None),
        ("inside", {"typed": False, "verdict": None}, "unread"),  # "abc"
        ("inside", {"typed": True, "verdict": "outside"}, "contradicts"),
        ("outside", {"typed": True, "verdict": "inside"}, "contradicts"),
        ("inside", {"typed": True, "verdict": "inside"}, None),
        ("inside", {"typed": True, "verdict": None}, None),  # one of several layouts
        (None, {"typed": True, "verdict": "outside"}, None),
    ],
)
def test_an_answer_is_asked_about_where_the_reading_does_not_bear_it_out(
    call: Call, reads: str | None, read: Any, doubt: str | None
) -> None:
    assert call("doubtOf", reads, read) == doubt


def figure(low: float | None, high: float | None, words: str) -> dict[str, Any]:
    limits = {key: value for key, value in (("low", low), ("high", high)) if value is not None}
    return {"device": None, "name": "", "words": words, "note": None, "scales": [{"unit": "kΩ", "ranges": [limits]}]}


LOOP = figure(4.5, 4.9, "4.7 kΩ")
ACROSS = figure(2.2, 2.5, "2.35 kΩ")


def typed(text: str, over: bool = False) -> dict[str, Any]:
    return {"text": text, "over": over, "unit": "kΩ"}


@pytest.mark.parametrize(
    ("figures", "box", "verdict", "expected"),
    [
        ([LOOP], typed("0.4"), "outside", "4.7 kΩ"),
        ([LOOP], typed("4,7"), "inside", "4.7 kΩ"),
        ([LOOP], typed("", over=True), "outside", "4.7 kΩ"),
        ([LOOP, ACROSS], typed("2.3"), None, "2.35 kΩ"),  # right for one layout: no verdict on the other
        ([LOOP, ACROSS], typed("0.4"), "outside", None),  # none of them is known to be the one meant
    ],
)
def test_a_reading_is_judged_by_every_figure_that_may_be_meant(
    call: Call, figures: Any, box: Any, verdict: str | None, expected: str | None
) -> None:
    read = call("readOf", figures, box)
    assert (read["verdict"], read.get("expected", {}).get("words")) == (verdict, expected)


def test_what_is_no_reading_is_none(call: Call) -> None:
    assert call("readOf", [LOOP], typed("right")) is None
    assert call("readOf", [LOOP], None) is None


def test_what_is_expected_is_said_in_short(call: Call) -> None:
    assert call("expectedIn", [LOOP], "kΩ") == "4.5–4.9"
    assert call("expectedIn", [LOOP, figure(None, 0.01, "")], "kΩ") == "4.5–4.9 or 0.01 or less"


def test_back_keeps_the_reading(call: Call) -> None:
    event = {**WITHIN, "reading": {"value": 5, "unit": "mm"}}
    assert call("retyped", {}, event) == {"gap-against-record": {"text": "5", "over": False, "unit": "mm"}}
    over = {**OPEN, "reading": {"over": True, "unit": "kΩ"}}
    assert call("retyped", {}, over)["loop-at-its-end"] == {"text": "", "over": True, "unit": "kΩ"}
    assert call("retyped", {"x": typed("1")}, WITHIN) == {"x": typed("1")}


def test_a_step_answered_anew_keeps_what_still_holds(call: Call, problem: Any) -> None:
    events = [WITHIN, OPEN, IN_VAIN, {"do": "cannot", "id": "across-the-reed"}]
    same = call("changed", problem, events, 0, {**WITHIN, "reading": {"value": 5, "unit": "mm"}})
    assert same["dropped"] == 0
    assert [one["id"] for one in same["events"]] == [one["id"] for one in events]


def test_a_step_answered_anew_drops_what_fits_no_more(call: Call, problem: Any) -> None:
    """The loop reads a third value: the wrong resistor alone is left, and a broken reed was no remedy for that."""
    gone = {"do": "mend", "id": "reed-broken", "gone": True}
    made = call("changed", problem, [WITHIN, OPEN, gone], 1, check("loop-at-its-end", "other-value"))
    assert made["dropped"] == 1
    assert [one["id"] for one in made["events"]] == ["gap-against-record", "loop-at-its-end"]
    assert call("after", problem, made["events"])["left"] == ["resistor-wrong"]


def test_every_change_of_every_step_can_be_played(call: Call, problem: Any) -> None:
    events = [WITHIN, OPEN, check("across-the-reed", "contact-open"), IN_VAIN]
    for at, event in enumerate(events[:3]):
        results = next(one["results"] for one in problem["checks"] if one["id"] == event["id"])
        for result in results:
            made = call("changed", problem, events, at, check(event["id"], result["id"]))
            after = call("after", problem, made["events"])
            assert after["events"] == len(made["events"]), (event, result)
