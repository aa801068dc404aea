"""Problems too large to be solved exactly: the plan stays inside the bound it reports."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from latchside.order import Problem, make_plan
from latchside.order.compare import in_order
from latchside.order.heuristic import lower_bound
from latchside.order.plan import Node
from latchside.order.problem import Cause, Check, Result

from ..long import tries
from .order_problems import Record, problem, records


@settings(max_examples=tries(50, 300))
@given(records(most_causes=6, most_checks=5))
def test_the_best_lies_between_the_bound_and_the_plan(made: Record) -> None:
    whole = problem(made["causes"], made["checks"])
    best = make_plan(whole).expected
    for rest_work in (0, 8, 100):
        guessed = make_plan(whole, most_work=-1, rest_work=rest_work)
        assert not guessed.exact
        assert guessed.bound <= best + 1e-9
        assert best <= guessed.expected + 1e-9
        assert guessed.expected == pytest.approx(guessed.bound + guessed.gap)


@given(records(most_causes=6, most_checks=5))
def test_no_worse_than_the_simple_orders(made: Record) -> None:
    whole = problem(made["causes"], made["checks"])
    guessed = make_plan(whole, most_work=-1, rest_work=0)
    assert guessed.expected <= min(guessed.compared.by_frequency, guessed.compared.by_time) + 1e-9
    assert guessed.compared.worst_order is None


@given(records(most_causes=6, most_checks=4))
def test_more_work_gives_no_worse_a_bound_than_none(made: Record) -> None:
    whole = problem(made["causes"], made["checks"])
    assert lower_bound(whole, 0) <= lower_bound(whole, 1e9) + 1e-9


def large(causes: int, checks: int, *, misleading: bool) -> Problem:
    listed = []
    for k in range(checks):
        share = [(0.9 if misleading else 1.0) if (i * (k + 3) + k) % 5 < 2 else 0.0 for i in range(causes)]
        chances = (tuple(share), tuple(1 - one for one in share))
        results = (
            Result(f"r{j}", sum(1 << i for i, one in enumerate(row) if one), row) for j, row in enumerate(chances)
        )
        listed.append(Check(f"k{k}", 2 + k % 4, 0, tuple(results)))
    return Problem(tuple(Cause(f"c{i}", 1 + i % 6, 5 + i % 30) for i in range(causes)), tuple(listed))


@pytest.mark.parametrize("misleading", [False, True])
def test_a_large_problem_is_planned_with_its_gap(misleading: bool) -> None:
    whole = large(24, 16, misleading=misleading)
    plan = make_plan(whole)
    assert not plan.exact
    assert 0 < plan.bound <= plan.expected
    assert plan.expected < in_order(sorted(whole.causes, key=lambda one: -one.weight / one.minutes))
    assert plan.tree is not None
    assert mended(plan.tree) == {one.id for one in whole.causes}


def mended(node: Node) -> set[str]:
    own = {node.id} if node.do == "mend" and node.id else set()
    return own.union(*(mended(below) for below in node.below))
