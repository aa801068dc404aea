"""What an answer changed in the plan, as the page tells it."""

from __future__ import annotations

from typing import Any

from latchside.root import ROOT

from ..node import Node

CHANGES = (ROOT / "content/assets/js/plan/changes.js").as_uri()


def opening(id_: str, device: str | None, figures: dict[str, str], problems: tuple[str, ...] = ()) -> dict[str, Any]:
    return {
        "id": id_, "spoken": id_.title(), "device": device and {"name": device, "address": ""},
        "figures": [{"name": name, "shown": shown} for name, shown in figures.items()],
        "problems": [{"found": found} for found in problems],
    }  # fmt: skip


def changes(node: Node, before: list[Any] | None, after: list[Any]) -> list[tuple[str, ...]]:
    told = node.evaluate(
        "async ({ script, before, after }) =>"
        " (await import(script)).changesBetween(before && { openings: before }, { openings: after })",
        {"script": CHANGES, "before": before, "after": after},
    )
    return [(one["id"], one["sort"], one["what"], one["before"], one["after"]) for one in told]


def test_the_first_plan_changes_nothing(node: Node) -> None:
    assert changes(node, None, [opening("hall", "A", {"Gap": "3 mm"})]) == []


def test_what_is_the_same_is_not_told(node: Node) -> None:
    one = opening("hall", "A", {"Gap": "3 mm"}, ("No cable.",))
    assert changes(node, [one], [one]) == []


def test_a_figure_a_problem_and_a_device_are_told_with_both_values(node: Node) -> None:
    before = [opening("hall", "A", {"Gap": "3 mm"}), opening("yard", "A", {"Gap": "3 mm"}), opening("loft", None, {})]
    after = [
        opening("hall", "A", {"Gap": "19 mm"}, ("It does not close.",)),
        opening("yard", "B", {"Gap": "9 mm"}),
        opening("loft", "C", {"Gap": "2 mm"}),
        opening("new", "C", {}),
    ]
    assert changes(node, before, after) == [
        ("hall", "figure", "Gap", "3 mm", "19 mm"),
        ("hall", "problem", "It does not close.", "", "It does not close."),
        ("yard", "device", "", "A", "B"),
        ("loft", "device", "", "", "C"),
    ]
    assert ("hall", "problem", "It does not close.", "It does not close.", "") in changes(node, after, before)


def test_a_problem_is_settled_only_where_a_device_stays_and_no_other_comes(node: Node) -> None:
    before = [opening("hall", "A", {}, ("No cable.",))]
    for after in (opening("hall", None, {}), opening("hall", "A", {}, ("No cable, and a fire door.",))):
        assert not [one for one in changes(node, before, [after]) if one[4] == "" and one[1] == "problem"]
    assert changes(node, before, [opening("hall", "A", {})]) == [("hall", "problem", "No cable.", "No cable.", "")]


def site(openings: list[Any], minutes: float, items: dict[str, str]) -> dict[str, Any]:
    loaded = [{"name": name, "amount": amount} for name, amount in items.items()]
    return {"openings": openings, "minutes": minutes, "days": 1, "items": loaded}


def test_two_plans_are_laid_side_by_side(node: Node) -> None:
    before = {**opening("hall", "A", {"Gap": "3 mm"}), "positions": ["W1"]}
    after = {**opening("hall", "B", {}), "positions": ["R1"]}
    told = node.evaluate(
        "async ({ script, before, after }) => (await import(script)).differences(before, after)",
        {
            "script": (ROOT / "content/assets/js/plan/differences.js").as_uri(),
            "before": site([before], 90, {"Cable": "20 m", "Pad": "2"}),
            "after": site([after], 60, {"Cable": "10 m", "Cell": "1", "Pad": "2"}),
        },
    )
    assert [(one["sort"], one["what"], one["before"], one["after"]) for one in told] == [
        ("device", "", "A", "B"),
        ("positions", "", "W1", "R1"),
        ("minutes", "", "90", "60"),
        ("item", "Cable", "20 m", "10 m"),
        ("item", "Cell", "", "1"),
    ]


def test_answers_that_were_tried_take_nothing_of_what_was_stored_meanwhile(node: Node) -> None:
    told = node.evaluate(
        "async ({ script, rows }) => (await import(script)).withTried(...rows)",
        {
            "script": (ROOT / "content/assets/js/survey/model.js").as_uri(),
            "rows": [
                {"key": "k", "data": {"kind": "gate", "gap": "3 mm", "notes": "typed elsewhere"}, "typed": {}},
                {"key": "k", "data": {"kind": "gate", "gap": "3 mm", "use": "daily"}, "typed": {"height": "two"}},
                {"key": "k", "data": {"kind": "gate", "gap": "9 mm"}, "typed": {}},
            ],
        },
    )
    assert told == {"key": "k", "data": {"kind": "gate", "gap": "9 mm", "notes": "typed elsewhere"}, "typed": {}}
