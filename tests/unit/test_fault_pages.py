"""The pages of faults: the plan in words and as a picture, and the lists across all faults."""

from __future__ import annotations

import json
import re
from xml.etree import ElementTree as ET

import pytest

from latchside.library import Library, Record
from latchside.order.plan import Node
from latchside.pages import fault_influence, fault_plan, fault_tree
from latchside.pages.fault_data import run_data
from latchside.pages.fault_first import likeliest
from latchside.pages.fault_lists import Find, pages
from latchside.pages.page import Page

MOST_POINTS = 16
"""What still prints on one sheet of text and one of the picture."""


@pytest.fixture(scope="module")
def faults(shipped_library: Library) -> tuple[Record, ...]:
    return shipped_library.of("fault")


def shown(library: Library, fault: Record) -> fault_plan.PlanShown:
    return fault_plan.shown(Page(library, fault.address, fault), fault)


def test_there_are_thirty_faults_of_three_causes_and_more(faults: tuple[Record, ...]) -> None:
    assert len(faults) >= 30
    assert all(len(fault["causes"]) >= 3 and len(fault["checks"]) >= 2 for fault in faults)


def test_every_point_of_a_plan_leads_on_or_out(shipped_library: Library, faults: tuple[Record, ...]) -> None:
    for fault in faults:
        plan = shown(shipped_library, fault)
        numbers = {point.number for point in plan.points}
        assert numbers == set(range(1, len(numbers) + 1)), fault.id
        assert len(numbers) <= MOST_POINTS, fault.id
        for point in plan.points:
            assert point.answers, (fault.id, point.number)
            for answer in point.answers:
                assert answer.to in numbers if answer.to else answer.end, (fault.id, point.number)
                assert not answer.to or answer.to > point.number


def test_shares_are_said_in_words() -> None:
    assert [fault_plan.share_word(share).id.partition("#share-")[2] for share in (1.0, 0.6, 0.2, 0.01, 0.0)] == [
        "always", "often", "sometimes", "rare", "rare",
    ]  # fmt: skip


def test_a_device_with_another_plan_is_named(shipped_library: Library) -> None:
    fault = shipped_library.records["fault"]["shows-open-when-shut"]
    differs = {one.devices[0].id: one for one in shown(shipped_library, fault).differs}
    assert set(differs) == {"recessed-contact", "surface-contact"}  # the other loses its halves as often
    assert int(differs["surface-contact"].expected) < int(shown(shipped_library, fault).expected)
    assert differs["surface-contact"].left_out
    assert not differs["recessed-contact"].left_out


def test_the_picture_is_black_on_white_with_readable_text(shipped_library: Library, faults: tuple[Record, ...]) -> None:
    for fault in faults:
        made = fault_tree.drawing(shipped_library, fault)
        root = ET.fromstring(made.svg)
        texts = [one for one in root.iter() if one.tag.endswith("}text")]
        assert made.title
        assert made.message
        assert all(float(one.attrib["font-size"]) >= 13 for one in texts)
        numbers = [int(found[1]) for one in texts if (found := re.match(r"(\d+)  ", one.text or ""))]
        assert sorted(numbers) == list(range(1, len(shown(shipped_library, fault).points) + 1)), fault.id
        colours = {value for one in root.iter() for name in ("fill", "stroke") if (value := one.get(name))}
        assert colours <= {"#111111", "#ffffff", "#55626a", "none"}, fault.id
        for one in texts:  # a word in a sans serif of this size takes seven units a sign at most, on average
            assert float(one.attrib["x"]) + 6.9 * len(one.text or "") <= made.width, (fault.id, one.text)


def test_the_data_of_a_page_cannot_end_its_block(shipped_library: Library) -> None:
    for fault in shipped_library.of("fault"):
        text = str(run_data(shipped_library, fault))
        assert "<" not in text
        data = json.loads(text)
        assert data["fault"] == fault.id
        assert set(data["own"]) <= set(data["listed"])


def test_minutes_by_cause_add_up_to_the_expected_minutes(shipped_library: Library, faults: tuple[Record, ...]) -> None:
    for fault in faults:
        plan = fault_plan.plan_of(shipped_library, fault)
        share = fault_influence.probabilities(plan.problem)
        total = sum(share[one] * fault_influence.minutes_for(plan, one) for one in share)
        ends = [one for one in fault_influence.every_node(plan.tree) if one.do == "end" and one.left]
        if not ends:  # where a run ends with causes left, all of them are charged the same
            assert total == pytest.approx(plan.expected), fault.id
        assert total == pytest.approx(plan.expected, rel=0.2), fault.id


def test_the_page_to_find_a_fault_holds_them_all(shipped_library: Library, faults: tuple[Record, ...]) -> None:
    found = {address: made for address, _, made in pages(shipped_library)}
    find = found["faults/find/"]
    assert isinstance(find, Find)
    assert sorted(fault.id for _, group in find.groups for fault in group) == [fault.id for fault in faults]
    assert len(find.settling) == 10
    shares = [one.share for one in find.settling]
    assert shares == sorted(shares, reverse=True)
    fault = shipped_library.records["fault"]["shows-open-when-shut"]
    cause = next(one for one in fault["causes"] if one["id"] == "conductor-open")
    words = [find.word(cause, fault, alike[0]) for alike in find.columns]
    assert words == ["often", "often", "–", "often", "often", "often"]


def test_the_first_screen_names_the_likeliest_causes_and_how_to_tell_them(
    shipped_library: Library, faults: tuple[Record, ...]
) -> None:
    for fault in faults:
        often = [cause["frequency"] for cause in fault["causes"]]
        first = likeliest(shipped_library, fault)
        assert [one.cause["id"] for one in first] == list(dict.fromkeys(one.cause["id"] for one in first)), fault.id
        assert len(first) == 3
        assert [one.cause["frequency"] for one in first] == sorted(often, key=["often", "sometimes", "rare"].index)[:3]
        for one in first:
            assert one.result in one.check["results"]
            assert one.cause["id"] in one.result["leaves"]
            assert bool(one.reading) == ("measure" in one.check)
    first = likeliest(shipped_library, shipped_library.records["fault"]["shows-open-when-shut"])
    assert [one.check["id"] for one in first] == ["look-at-both-halves", "look-at-both-halves", "across-the-reed"]
    assert first[2].reading == "at most 10\u00a0Ω or at most 5\u00a0Ω"


def test_keeping_to_a_plan_never_gains(shipped_library: Library, faults: tuple[Record, ...]) -> None:
    firm = fault_influence.firmness(shipped_library)
    assert {one.fault.id for one in firm} == {fault.id for fault in faults}
    for one in firm:
        assert one.of == 2 * len(one.fault["causes"])
        assert 0 <= one.first <= one.of
        assert 0 <= one.pairs <= 1
        assert one.lost >= 0
    prevented = fault_influence.prevented(shipped_library)
    assert prevented[0].minutes >= prevented[-1].minutes > 0


def test_no_branch_leaves_protection_off(shipped_library: Library, faults: tuple[Record, ...]) -> None:
    """Whatever a check took off is put back before a remedy is proved and before the fault is passed on."""

    def walk(node: Node, due: frozenset[str], restores: frozenset[str]) -> None:
        if node.do != "check":
            assert due <= set(node.restore), node
            due = frozenset()
        due -= set(node.restore)
        if node.do == "check" and node.id in restores:
            due |= {node.id or ""}
        for below in node.below:
            walk(below, due, restores)

    for fault in faults:
        plan = fault_plan.plan_of(shipped_library, fault)
        assert plan.tree is not None
        walk(plan.tree, frozenset(), frozenset(one["id"] for one in fault["checks"] if "restore" in one))
