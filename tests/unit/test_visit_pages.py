"""What pages hand to the script: figures to judge against, in every unit, never in contradiction to what is shown."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

import pytest

from latchside.figures.units import figure, symbol
from latchside.figures.words import accepted
from latchside.library import Library, Record
from latchside.library.compiled import own_steps
from latchside.library.quantity import quantity
from latchside.pages.page import Page
from latchside.pages.readings import expectations
from latchside.pages.visit_lists import visit_lists
from latchside.version import library_version
from latchside.visits.state import judge


def measured(library: Library) -> Iterator[tuple[Record, Any, Any]]:
    """Every measuring item: its list, the item, and the measurement."""
    for checklist in library.of("checklist"):
        for point in checklist["points"]:
            for item in point["items"]:
                if item.get("measure") == "step":
                    name, _, step = item["step"].partition("/")
                    procedure = library.find("procedure", name)
                    assert procedure
                    yield checklist, item, next(one for _, one in own_steps(procedure) if one["id"] == step)["measure"]
                elif item.get("measure"):
                    yield checklist, item, item["measure"]


def figures_of(library: Library, measure: Any, owner: Record, only: Any = None) -> list[dict[str, Any]]:
    text = expectations(library, measure, owner, only).unescape()
    return [
        {**one, "device": device or None, "name": name}
        for one in json.loads(text)
        for device, name in one["of"].items()
    ]


def test_every_measuring_item_has_a_figure(shipped_library: Library) -> None:
    seen = 0
    for checklist, item, measure in measured(shipped_library):
        seen += 1
        for one in figures_of(shipped_library, measure, checklist, item.get("only")):
            assert one["scales"], (checklist.id, item["id"])
            assert one["words"]
            assert one["device"] is None or one["device"] in (item.get("only") or (one["device"],))
    assert seen > 20


def test_limits_are_those_that_are_shown(shipped_library: Library) -> None:
    """Each limit, written as the page writes figures, stands in the words of the figure; so does its converted one."""
    for checklist, item, measure in measured(shipped_library):
        for one in figures_of(shipped_library, measure, checklist, item.get("only")):
            scale = one["scales"][0]
            for limits in scale["ranges"]:
                for limit in limits.values():
                    assert figure(limit) in one["words"], (checklist.id, item["id"], limit, one["words"])
            inch = next((scale for scale in one["scales"] if scale["unit"] == "in"), None)
            for limit in inch["ranges"][0].values() if inch else ():
                assert figure(limit) in one["words"], (checklist.id, item["id"], limit, one["words"])


def test_the_units_of_one_figure_agree(shipped_library: Library) -> None:
    factors = {
        "\u03a9": 1,
        "k\u03a9": 1e3,
        "M\u03a9": 1e6,
        "s": 1,
        "min": 60,
        "h": 3600,
        "V": 1,
        "mV": 1e-3,
        "mm": 1,
        "in": 25.4,
        "m": 1,
        "ft": 0.3048,
    }
    for checklist, item, measure in measured(shipped_library):
        for one in figures_of(shipped_library, measure, checklist, item.get("only")):
            first, *others = one["scales"]
            for other in others:
                for key, limit in first["ranges"][0].items():
                    wanted = limit * factors[first["unit"]] / factors[other["unit"]]
                    assert other["ranges"][0][key] == pytest.approx(wanted, rel=0.05)


LOOP = {"value": 2200, "unit": "ohm", "tolerance": {"percent": 5}, "status": "common practice"}


@pytest.mark.parametrize(
    ("stated", "unit", "value", "verdict"),
    [
        (LOOP, "k\u03a9", 2.09, "inside"),
        (LOOP, "k\u03a9", 2.0899, "outside"),
        (LOOP, "\u03a9", 2310, "inside"),
        ({"min": 1, "unit": "Mohm", "status": "common practice"}, "k\u03a9", 1000, "inside"),
        ({"min": 1, "unit": "Mohm", "status": "common practice"}, "M\u03a9", 0.99, "outside"),
        ({"max": 3, "unit": "mm", "status": "common practice"}, "in", 0.12, "inside"),
        ({"max": 3, "unit": "mm", "status": "common practice"}, "in", 0.13, "outside"),
        ({"min": 3.1, "max": 3.4, "unit": "V", "status": "common practice"}, "V", 3.4, "inside"),
        ({"min": 3.1, "max": 3.4, "unit": "V", "status": "common practice"}, "mV", 3090, "outside"),
        ({"value": 0, "unit": "mm", "tolerance": {"plus_minus": 2}, "status": "common practice"}, "mm", -2, "inside"),
        ({"value": 60, "unit": "min", "tolerance": {"percent": 10}, "status": "typical"}, "h", 1.1, "inside"),
        ({"min": 10, "unit": "dB", "status": "typical"}, "dB", 9.9, "outside"),
    ],
)  # fmt: skip
def test_a_reading_is_judged_in_its_unit(
    shipped_library: Library, stated: dict[str, Any], unit: str, value: float, verdict: str
) -> None:
    owner = shipped_library.of("checklist")[0]
    (one,) = figures_of(shipped_library, {"expect": stated}, owner)
    scale = next(scale for scale in one["scales"] if scale["unit"] == unit)
    assert one["words"] == accepted(quantity(stated))
    assert judge({"value": value, "unit": unit}, {"words": "x", **scale}) == verdict


@pytest.mark.parametrize(
    ("name", "bound", "value", "unit", "verdict"),
    [
        ("hole-depth", "at least", 60, "mm", "inside"),
        ("hole-depth", "at least", 30, "mm", "outside"),
        ("hole-depth", None, 60, "mm", "outside"),
        ("missed-window", "at most", 4, "h", "inside"),
        ("missed-window", "at most", 24, "h", "outside"),
        ("check-in", "at most", 50, "min", "inside"),
        ("check-in", "at most", 120, "min", "outside"),
    ],
)
def test_where_more_or_less_is_welcome_one_limit_binds(
    shipped_library: Library, name: str, bound: str | None, value: float, unit: str, verdict: str
) -> None:
    measure = {"expect": {"device_value": name, **({"bound": bound} if bound else {})}}
    only = ["recessed-contact"] if name == "hole-depth" else ["surface-contact"]
    found = json.loads(expectations(shipped_library, measure, shipped_library.of("checklist")[0], only).unescape())
    (stated,) = found
    (scale,) = (one for one in stated["scales"] if one["unit"] == unit)
    assert judge({"value": value, "unit": unit}, {"words": stated["words"], **scale}) == verdict
    assert stated["words"].startswith(bound or "35")


@pytest.mark.parametrize("name", ["window-at-grade", "age-at-setting"])
def test_what_a_grade_asks_is_not_said_to_stand_on_a_label(shipped_library: Library, name: str) -> None:
    owner = shipped_library.find("procedure", "prove-check-in")
    assert owner is not None
    measure = {"expect": {"device_value": name, "bound": "at most"}}
    for device in (None, shipped_library.find("device", "surface-contact")):
        said = str(Page(shipped_library, "procedures/prove-check-in/", device=device).expected(measure, owner))
        assert "Grade 2" in said
        assert "label" not in said


def test_alternatives_are_figures_of_their_own(shipped_library: Library) -> None:
    stated = {"one_of": [2200, 4700], "unit": "ohm", "tolerance": {"percent": 6}, "status": "typical"}
    found = figures_of(shipped_library, {"expect": stated}, shipped_library.of("checklist")[0])
    assert [one["scales"][0]["ranges"] for one in found] == [
        [{"low": 2.07, "high": 2.33}],  # 2.2 less and more 6 %: 2.068 and 2.332, in three digits as a meter shows
        [{"low": 4.42, "high": 4.98}],  # 4.7: 4.418 and 4.982
    ]
    assert symbol("kohm") == found[0]["scales"][0]["unit"]


def test_the_page_of_visits_knows_every_list(shipped_library: Library) -> None:
    data = json.loads(visit_lists(shipped_library, Page(shipped_library, "visits/")).unescape())
    assert data["library"] == library_version()
    assert [one["id"] for one in data["devices"]] == [device.id for device in shipped_library.of("device")]
    stages = list(shipped_library.schemas.words("stage"))
    order = [stages.index(shipped_library.records["checklist"][listed["id"]]["stage"]) for listed in data["checklists"]]
    assert order == sorted(order)
    by_id = {listed["id"]: listed for listed in data["checklists"]}
    assert by_id.keys() == shipped_library.records["checklist"].keys()
    for checklist in shipped_library.of("checklist"):
        listed = by_id[checklist.id]
        items = [item["id"] for point in checklist["points"] for item in point["items"]]
        assert [item["id"] for item in listed["items"]] == items
        assert listed["href"] == f"../checklists/{checklist.id}/"
        assert all("[[" not in item["words"] and len(item["words"]) <= 300 for item in listed["items"])
