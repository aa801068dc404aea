"""Remedies that wait for others: no plan mends them too soon, and none that keeps to it costs less."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given

from latchside.order import make_plan
from latchside.order.compare import in_order
from latchside.order.plan import Node
from latchside.order.problem import Cause

from .order_problems import Record, cause, check, problem, record, records
from .order_problems import causes as some_causes
from .test_order_exact import expected, root


def in_vain(node: Node) -> list[str]:
    """The causes mended when every proof fails and every check shows its first result, in order."""
    found = []
    while node.do != "end":
        found += [node.id or ""] if node.do == "mend" else []
        node = node.fails or node.branches[0].next
    return found


@given(some_causes(most=6, electrician=False))
def test_without_checks_remedies_are_in_the_best_order_that_keeps_to_what_waits(made: list[Record]) -> None:
    whole = problem(made)
    waits = {one["id"]: set(one.get("after", ())) for one in made}

    def keeps(order: tuple[Cause, ...]) -> bool:
        return all(not waits[one.id] & {later.id for later in order[at:]} for at, one in enumerate(order))

    plan = make_plan(whole)
    allowed = [order for order in permutations(whole.causes) if keeps(order)]
    assert plan.expected == pytest.approx(min(in_order(order) for order in allowed))
    assert plan.compared.worst_order == pytest.approx(max(in_order(order) for order in allowed))
    assert plan.tree is not None
    done = in_vain(plan.tree)
    assert len(done) == len(made)
    assert all(not waits[one] & set(done[at:]) for at, one in enumerate(done))


@given(records(most_causes=5, most_checks=4))
def test_no_remedy_comes_before_those_it_waits_for(made: Record) -> None:
    waits = {one["id"]: set(one.get("after", ())) for one in made["causes"]}

    def walk(node: Node) -> None:
        if node.do == "mend":
            assert not waits[node.id or ""] & {one for one, _ in node.left}
        for below in node.below:
            walk(below)

    for most_work in (150_000, -1):
        tree = make_plan(problem(made["causes"], made["checks"]), most_work=most_work, rest_work=8).tree
        assert tree is not None
        walk(tree)


@given(records(most_causes=5, most_checks=3))
def test_waiting_never_costs_less(made: Record) -> None:
    free = [{name: value for name, value in one.items() if name != "after"} for one in made["causes"]]
    assert expected(record(free, made["checks"])) <= expected(made) + 1e-9


def test_a_keep_is_mended_before_a_magnet_is_moved() -> None:
    keep, magnet = cause("keep", "sometimes", 40), cause("magnet", "often", 20)
    assert root([keep, magnet], []).id == "magnet"
    tree = root([keep, magnet | {"after": ["keep"]}], [])
    assert in_vain(tree) == ["keep", "magnet"]
    assert tree.expected == pytest.approx(40 + 6 / 9 * 20)
    checked = root([keep, magnet | {"after": ["keep"]}], [check("k", 6, "keep", "magnet")])
    assert (checked.do, checked.id) == ("check", "k")  # 6 + 80/3 against 40 + 40/3


def test_what_hangs_together_goes_in_blocks() -> None:
    """`b` alone would come last, but only after it can the cheap and likely `a` be mended: both come before `c`."""
    three = [cause("a", "often", 1, after=["b"]), cause("b", "rare", 5), cause("c", "often", 10)]
    assert in_vain(root(three, [])) == ["b", "a", "c"]


def test_what_waits_for_a_remedy_that_cannot_be_done_is_checked_or_passed_on() -> None:
    two = [cause("keep", "often", 40), cause("magnet", "often", 20, after=["keep"])]
    whole = problem(two, [check("k", 6, "keep", "magnet")])
    tree = make_plan(whole.without(remedies=["keep"])).tree
    assert tree is not None
    assert tree.id == "k"
    assert [branch.next.do for branch in tree.branches] == ["end", "mend"]
    alone = make_plan(whole.without(["k"], ["keep"])).tree
    assert alone is not None
    assert (alone.do, alone.why) == ("end", "not-ours")
