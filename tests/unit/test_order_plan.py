"""Plans of the shipped faults: every answer leads to an end, protection is put back, and the figures add up."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from latchside.library import Library, Record
from latchside.order import Plan, from_fault, make_plan
from latchside.order.exact import MOST_WORK
from latchside.order.plan import Node, as_data
from latchside.order.problem import NEVER_IN_A_PLAN, guesses
from latchside.order.states import Moves
from latchside.order.text import as_text
from latchside.rules import plan_size

from .order_problems import cause, check, problem

Case = tuple[Record, str | None, Plan]


@pytest.fixture(scope="module")
def shipped_plans(shipped_library: Library) -> list[Case]:
    known = guesses(shipped_library.schemas)
    devices = shipped_library.of("device")
    return [
        (fault, device, make_plan(from_fault(fault.data, known, device)))
        for fault in shipped_library.of("fault")
        for device in [None, *(one.id for one in devices if fault.id in one.listed("faults"))]
    ]


def tree(plan: Plan) -> Node:
    assert plan.tree is not None
    return plan.tree


def every(node: Node) -> Iterator[Node]:
    yield node
    for below in node.below:
        yield from every(below)


def test_all_are_exact(shipped_plans: list[Case]) -> None:
    assert shipped_plans
    assert all(plan.exact and plan.gap == 0 for _, _, plan in shipped_plans)


def test_the_measure_of_the_rule_is_that_of_the_planner(shipped_plans: list[Case]) -> None:
    for fault, device, plan in shipped_plans:
        if device is None:
            moves = Moves(plan.problem)
            assert plan_size.size(fault.data) == pytest.approx(moves.size(moves.start()[0], ()))
    assert plan_size.MOST <= MOST_WORK


def test_every_check_tells_causes_apart(shipped_plans: list[Case]) -> None:
    """A check that can never stand in a plan would be dead text in the guided run."""
    for fault, device, plan in shipped_plans:
        moves = Moves(plan.problem)
        idle = [one.id for k, one in enumerate(plan.problem.checks) if not moves.tells(k, one.covers)]
        assert device or not idle, (fault.id, idle)


def test_no_magnet_is_moved_before_the_leaf_is_right(shipped_plans: list[Case]) -> None:
    """Hinge, keep, seal and latch are mended by a fitter of doors; what waits for them waits in every plan."""
    waiting = 0
    for fault, _, plan in shipped_plans:
        waits = {one["id"]: set(one.get("after", ())) for one in fault["causes"]}
        for node in every(tree(plan)):
            if node.do == "mend" and waits[node.id or ""]:
                waiting += 1
                assert not waits[node.id or ""] & {cause for cause, _ in node.left}, (fault.id, node.id)
    assert waiting


def test_every_answer_leads_to_an_end(shipped_plans: list[Case]) -> None:
    for fault, _, plan in shipped_plans:
        results = {one["id"]: [result["id"] for result in one["results"]] for one in fault["checks"]}
        for node in every(tree(plan)):
            if node.do == "check":
                assert [branch.result for branch in node.branches] == results[node.id or ""]
            elif node.do == "mend":
                assert node.fails is not None
            else:
                assert not node.below
                assert node.why


def test_every_cause_is_mended_or_passed_on(shipped_plans: list[Case]) -> None:
    for fault, _, plan in shipped_plans:
        mended = {node.id for node in every(tree(plan)) if node.do == "mend"}
        who = {one["id"]: one["remedy"]["who"] for one in fault["causes"]}
        assert mended == {one.id for one in plan.problem.causes if who[one.id] != NEVER_IN_A_PLAN}


def test_a_result_that_goes_on_or_stops_ends_its_branch(shipped_plans: list[Case]) -> None:
    for fault, _, plan in shipped_plans:
        results = {(one["id"], result["id"]): result for one in fault["checks"] for result in one["results"]}
        for node in every(tree(plan)):
            for branch in node.branches:
                result = results[node.id or "", branch.result]
                if "go" in result:
                    assert (branch.next.why, branch.next.id) == ("go", result["go"])
                elif "escalate" in result:
                    assert branch.next.why == "result"


def unrestored(node: Node, pending: tuple[str, ...], restores: set[str]) -> Iterator[str]:
    """Checks whose put-back is missing, or comes twice, on the way to a remedy or an end."""
    for one in node.restore:
        if one not in pending:
            yield f"{one} is put back without having been done"
    pending = tuple(one for one in pending if one not in node.restore)
    if node.do != "check" and pending:
        yield f"{pending} not put back before {node.do} {node.id}"
    if node.do == "check" and node.id in restores:
        pending = (*pending, node.id)
    for below in node.below:
        yield from unrestored(below, pending, restores)


def test_no_branch_leaves_protection_off(shipped_plans: list[Case], shipped_library: Library) -> None:
    touch = guesses(shipped_library.schemas).touch
    for fault, _, plan in shipped_plans:
        restores = {one["id"] for one in fault["checks"] if "restore" in one}
        assert {one["id"] for one in fault["checks"] if touch & set(one["needs"])} <= restores
        assert list(unrestored(tree(plan), (), restores)) == []


def walked(node: Node) -> float:
    """Expected minutes, added up along the tree."""
    if node.do == "end":
        return 0.0
    total = node.minutes + node.set_up_minutes
    total += sum(branch.probability * walked(branch.next) for branch in node.branches)
    if node.fails:
        total += (1 - dict(node.left)[node.id or ""]) * walked(node.fails)
    return total


def test_figures_add_up(shipped_plans: list[Case]) -> None:
    for _, _, plan in shipped_plans:
        assert walked(tree(plan)) == pytest.approx(plan.expected)
        for node in every(tree(plan)):
            if node.do == "check":
                assert sum(branch.probability for branch in node.branches) == pytest.approx(1)
            if node.left:
                assert sum(share for _, share in node.left) == pytest.approx(1)
            for below in node.below:
                assert below.reached <= node.reached + 1e-12
        other = plan.compared
        assert plan.expected <= min(other.by_frequency, other.by_time) + 1e-9
        assert max(other.by_frequency, other.by_time) <= (other.worst_order or 0) + 1e-9


def test_set_ups_are_made_once_in_a_branch(shipped_plans: list[Case]) -> None:
    def twice(node: Node, up: frozenset[str]) -> bool:
        return bool(up & set(node.set_up)) or any(twice(below, up | set(node.set_up)) for below in node.below)

    assert not any(twice(tree(plan), frozenset()) for _, _, plan in shipped_plans)


def test_the_order_holds_everything_the_plan_does(shipped_plans: list[Case]) -> None:
    for _, _, plan in shipped_plans:
        done = {node.id for node in every(tree(plan)) if node.do != "end"}
        assert set(plan.order) == done
        assert len(plan.order) == len({(node.do, node.id) for node in every(tree(plan)) if node.do != "end"})
        assert plan.order[0] == tree(plan).id


def test_text_says_every_point(shipped_plans: list[Case], shipped_library: Library) -> None:
    for fault, device, plan in shipped_plans:
        text = as_text(plan, shipped_library, fault)
        points = sum(node.do != "end" for node in every(tree(plan)))
        assert sum(line[:3].strip().isdigit() for line in text.splitlines()) == points
        assert "[[" not in text
        assert f"Expected minutes: {plan.expected:.1f}".removesuffix(".0") in text
        assert fault.name in text.splitlines()[0]
        if device is None:
            assert ", on: " not in text.splitlines()[0]


# -- where a put-back falls ------------------------------------------------------------------------------------

FOUR = [cause(letter, "often", 100) for letter in "abcd"]


def test_a_cover_stays_off_while_the_next_check_needs_it_off() -> None:
    listed = [
        check("first", 1, "a b", "c d", needs=("cover-open",), restore="Close it."),
        check("second", 1, "a c", "b d", needs=("cover-open",), restore="Close it."),
    ]
    first = tree(make_plan(problem(FOUR, listed)))
    second = first.branches[0].next
    assert (first.id, second.id, second.restore) == ("first", "second", ())
    assert second.branches[0].next.restore == ("second", "first")
    assert second.branches[0].next.fails is not None
    assert second.branches[0].next.fails.restore == ()


def test_a_cover_is_put_back_before_a_check_that_needs_it_shut() -> None:
    listed = [
        check("first", 1, "a b", "c d", needs=("cover-open",), restore="Close it."),
        check("second", 9, "a c", "b d"),
    ]
    plan = make_plan(problem(FOUR, listed))
    first = tree(plan)
    order = [first.id, first.branches[0].next.id]
    assert set(order) == {"first", "second"}
    for node in every(first):
        if node.do == "check" and node.id == "second" and order[0] == "first":
            assert node.restore == ("first",)
    restores = {"first"}
    assert list(unrestored(first, (), restores)) == []


def test_an_answer_that_fits_no_cause_left_ends_in_the_escalation() -> None:
    three = [cause(letter, "often", 100) for letter in "abc"]
    listed = [check("first", 1, "a b", "c"), check("second", 1, "a", "b", "c")]
    for node in every(tree(make_plan(problem(three, listed)))):
        for branch in node.branches:
            assert branch.probability > 0 or branch.next.why == "does-not-fit"


def test_json_of_a_tree_and_of_a_list_have_the_same_top() -> None:
    made = as_data(make_plan(problem(FOUR, [check("k", 1, "a b", "c d")])))
    assert made["order"][0] == made["tree"]["id"] == "k"
    assert made["tree"]["expected_minutes"] == made["expected_minutes"]
    assert made["causes"][0] == {"id": "a", "probability": 0.25, "minutes": 100, "who": "technician"}
    assert "steps" not in made
