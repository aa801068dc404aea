"""What stands between survey and visit, under node: what differs, what is taken over, what the papers list."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from ..node import Node, pages_scripts
from ..visits.make import AT, DOOR, Entry, entry, item, site, some_id

CALL = """async ([folder, name, ...given]) => {
  const scripts = ["job/differences", "job/deviations", "job/job", "visit/entries"];
  const modules = await Promise.all(scripts.map((one) => import(`${folder}/assets/js/${one}.js`)));
  const it = Object.assign({}, ...modules);
  const survey = ({ data, rows }) => ({
    survey: { key: "s", data, typed: {}, order: rows.map(({ key }) => key), named: {} },
    openings: rows,
  });
  const calls = {
    differences: (entries, one, known) => it.differences(it.view(entries), survey(one), known),
    taken: (row, difference) => it.taken(row, difference).data,
    deviations: (entries, known) => it.deviations(it.view(entries), known),
    job: (entries) => it.jobOf(it.view(entries)),
  };
  return calls[name](...given) ?? null;
}"""
LIST = {"id": "position", "name": "Position", "per": "opening", "href": "", "devices": []}
ITEMS = [
    {"id": "gap", "words": "Gap", "measure": "fit-gap"},
    {"id": "loop", "words": "Loop", "measure": "loop-shut"},
    {"id": "look", "words": "Look"},
]
DEVICES = [
    {"id": "surface-contact", "name": "Surface contact"},
    {"id": "wide-reach-contact", "name": "Wide-gap contact"},
]
KNOWN = {"library": "0.1.0", "devices": DEVICES, "checklists": [{**LIST, "items": ITEMS}]}
MM = {"words": "3 to 10 mm", "unit": "mm", "ranges": [{"low": 3, "high": 10}]}
Call = Callable[..., Any]


@pytest.fixture(scope="module")
def call(node: Node, tmp_path_factory: pytest.TempPathFactory) -> Call:
    folder = pages_scripts(tmp_path_factory.mktemp("job"))
    return lambda name, *given: node.evaluate(CALL, [folder.as_uri(), name, *given])


def door(number: int = 2, n: int = 2, *, opening: str = DOOR, **fields: Any) -> Entry:
    about = {"name": "Back door", "device": "surface-contact", "removed": False, "after": []}
    return entry("opening", number, n, **{**about, **fields}, opening=opening)


def planned(*more: Entry) -> list[Entry]:
    """A visit of Elm House as its plan began it, and what came after."""
    job = {"opening": "back-door", "zone": "W1"}
    return [site(job={"id": "elm-house"}), door(job=job, expected={"fit-gap": MM}), *more]


def read(number: int, value: float, unit: str = "mm", **fields: Any) -> Entry:
    return item(number, number, reading={"value": value, "unit": unit}, expected=MM, **fields)


def surveyed(**data: Any) -> dict[str, Any]:
    """The survey of that house, with one door."""
    row = {"key": "a", "survey": "s", "typed": {}, "data": {"id": "back-door", "place": "Hall", "kind": "gate", **data}}
    return {"data": {"id": "elm-house", "name": "Elm House"}, "rows": [row]}


def found(call: Call, entries: list[Entry], one: dict[str, Any]) -> list[tuple[str, str, str]]:
    return [(it["sort"], it["before"], it["after"]) for it in call("differences", entries, one, KNOWN)]


def after_taking(call: Call, entries: list[Entry], one: dict[str, Any]) -> dict[str, Any]:
    """The survey once all differences are taken over."""
    (row,) = one["rows"]
    for difference in call("differences", entries, one, KNOWN):
        row = {**row, "data": call("taken", row, difference)}
    return {**one, "rows": [row]}


def test_a_visit_that_went_by_its_plan_differs_in_nothing(call: Call) -> None:
    assert found(call, planned(), surveyed(gap="4 mm")) == []
    assert found(call, planned(read(3, 4)), surveyed(gap="4 mm")) == []
    assert found(call, planned(door(3, 3, name="Rear door", after=[some_id(2)])), surveyed()) == []


def test_another_device_is_a_difference_until_the_survey_has_it(call: Call) -> None:
    other = planned(door(3, 3, device="wide-reach-contact", after=[some_id(2)]))
    one = surveyed()
    assert found(call, other, one) == [("device", "surface-contact", "wide-reach-contact")]
    chosen = surveyed(device={"class": "recessed-contact", "reason": "Asked for"})
    assert found(call, other, chosen) == [("device", "recessed-contact", "wide-reach-contact")]
    again = after_taking(call, other, one)
    assert again["rows"][0]["data"]["device"]["class"] == "wide-reach-contact"
    assert "2026-11-25" in again["rows"][0]["data"]["device"]["reason"]
    assert found(call, other, again) == []
    back = [*other, door(4, 4, after=[some_id(3)])]
    assert found(call, back, again) == [("device", "wide-reach-contact", "surface-contact")]


def test_what_the_lead_chose_since_is_no_difference_where_nobody_chose_on_site(call: Call) -> None:
    chosen = surveyed(device={"class": "wide-reach-contact", "reason": "Asked for"})
    assert found(call, planned(), chosen) == []


def test_what_nobody_chose_or_was_taken_off_is_no_device(call: Call) -> None:
    assert found(call, planned(door(3, 3, device=None, after=[some_id(2)])), surveyed()) == []
    off = door(3, 3, device="wide-reach-contact", removed=True, after=[some_id(2)])
    assert found(call, planned(off), surveyed()) == []


@pytest.mark.parametrize(
    ("gap", "units", "reading", "after"),
    [
        ("4 mm", "metric", (6, "mm"), "6 mm"),
        ("4 mm", "metric", (4.04, "mm"), None),  # no rule shows less
        ("3/16 in", "metric", (4.7625, "mm"), None),  # by definition, an inch is 25.4 mm
        ("1/4", "imperial", (6.35, "mm"), None),
        ("1/4", "imperial", (0.5, "in"), "0.5 in"),
        (4, "metric", (4, "mm"), None),
        (None, "metric", (4, "mm"), "4 mm"),
        ("unknown", "metric", (4, "mm"), "4 mm"),
        ("4 mm", "metric", (4, "V"), None),  # what is no length is no gap
    ],
)
def test_a_gap_is_compared_as_a_length(call: Call, gap: Any, units: str, reading: Any, after: str | None) -> None:
    one = surveyed(**({} if gap is None else {"gap": gap}))
    one["data"]["units"] = units
    entries = planned(read(3, *reading))
    expected = [] if after is None else [("gap", "" if gap is None else str(gap), after)]
    assert found(call, entries, one) == expected
    assert found(call, entries, after_taking(call, entries, one)) == []


def test_the_last_reading_counts_and_one_that_was_taken_back_does_not(call: Call) -> None:
    entries = planned(read(3, 6), read(4, 8, item="gap", after=[some_id(3)]))
    assert found(call, entries, surveyed(gap="4 mm")) == [("gap", "4 mm", "8 mm")]
    undo = entry("undo", 5, 5, undoes=[some_id(4)], reason="undo")
    assert found(call, [*entries, undo], surveyed(gap="4 mm")) == [("gap", "4 mm", "6 mm")]


def test_a_problem_becomes_a_note_and_puts_a_sound_contact_in_doubt(call: Call) -> None:
    loose = planned(item(3, 3, item="look", words="Look", outcome="problem", note="Hinge is loose"))
    one = surveyed(notes="Dog in the yard.", old_contact="yes")
    ((sort, before, after),) = found(call, loose, one)
    assert (sort, before) == ("defect", "Dog in the yard.")
    assert "Hinge is loose" in after
    again = after_taking(call, loose, one)
    assert again["rows"][0]["data"]["notes"].startswith("Dog in the yard. ")
    assert found(call, loose, again) == []
    loop = planned(item(3, 3, item="loop", words="Loop", outcome="problem", note="Open"))
    assert found(call, loop, one)[0] == ("contact", "yes", "no")
    assert [sort for sort, _, _ in found(call, loop, surveyed(old_contact="no"))] == ["defect"]


def test_a_code_in_a_problem_does_not_come_into_the_survey(call: Call) -> None:
    entries = planned(item(3, 3, item="look", outcome="problem", note="Keypad code is 4711"))
    ((_, _, after),) = found(call, entries, surveyed())
    assert "4711" not in after


def test_what_the_survey_says_otherwise_meanwhile_stays(call: Call) -> None:
    one = surveyed(gap="4 mm")
    (difference,) = call("differences", planned(read(3, 6)), one, KNOWN)
    changed = {**one["rows"][0], "data": {**one["rows"][0]["data"], "gap": "5 mm"}}
    assert call("taken", changed, difference)["gap"] == "5 mm"


def test_openings_of_another_survey_are_left_alone(call: Call) -> None:
    one = surveyed(id="cellar-hatch")
    assert found(call, planned(read(3, 6)), one) == []
    assert found(call, [site(), door(), read(3, 6)], surveyed()) == []  # a visit that came from no plan


def test_the_papers_list_what_came_out_otherwise_than_planned(call: Call) -> None:
    cellar = some_id(90)
    entries = planned(
        door(3, 3, device="wide-reach-contact", after=[some_id(2)]),
        read(4, 12, outcome="problem"),
        door(5, 5, opening=cellar, name="Cellar hatch", device=None),
    )
    said = call("deviations", entries, KNOWN)
    assert len(said) == 3
    assert all(words in said[0] for words in ("Back door", "Surface contact", "Wide-gap contact"))
    assert "12" in said[1]
    assert "Cellar hatch" in said[2]
    assert call("deviations", planned(read(3, 4)), KNOWN) == []
    gone = planned(door(3, 3, removed=True, after=[some_id(2)]))
    assert len(call("deviations", gone, KNOWN)) == 1


def test_the_job_of_a_visit_stays_when_it_is_called_otherwise(call: Call) -> None:
    renamed = site(3, 3, site="Elm House, rear", after=[some_id(1)], at=AT)
    assert call("job", [*planned(), renamed]) == {"id": "elm-house"}
    assert call("job", [site(), door()]) is None
