"""The plan of least expected minutes: never beaten, the same every time, and what it is in cases worked by hand."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from latchside.order import from_list, make_plan
from latchside.order.compare import in_order
from latchside.order.exact import Exact
from latchside.order.plan import Node, as_data
from latchside.order.problem import Problem
from latchside.order.states import Moves

from ..long import tries
from .order_problems import Record, cause, check, checks, least_minutes, problem, record, records
from .order_problems import causes as some_causes


def root(causes: list[Record], listed: list[Record]) -> Node:
    tree = make_plan(problem(causes, listed)).tree
    assert tree is not None
    return tree


def expected(made: Record) -> float:
    return make_plan(problem(made["causes"], made["checks"])).expected


# -- against an exhaustive search ------------------------------------------------------------------------------


@settings(max_examples=tries(50, 400))
@given(records())
def test_never_beaten_by_exhaustive_search(made: Record) -> None:
    assert expected(made) == pytest.approx(least_minutes(made))


@settings(max_examples=tries(25, 200))
@given(records(most_causes=5, most_checks=4, misleading=False))
def test_never_beaten_where_no_check_misleads(made: Record) -> None:
    assert expected(made) == pytest.approx(least_minutes(made))


@given(records(most_causes=5, most_checks=4), st.data())
def test_never_costs_more_with_a_check_more(made: Record, data: st.DataObject) -> None:
    more = record(made["causes"], [*made["checks"], data.draw(checks(made["causes"], "new"))])
    assert expected(more) <= expected(made) + 1e-9


@given(records(most_causes=5, most_checks=5))
def test_other_orders_never_cost_less(made: Record) -> None:
    plan = make_plan(problem(made["causes"], made["checks"]))
    other = plan.compared
    assert plan.exact
    assert other.worst_order is not None
    assert plan.expected <= min(other.by_frequency, other.by_time) + 1e-9
    assert max(other.by_frequency, other.by_time) <= other.worst_order + 1e-9


@given(records(most_causes=5, most_checks=5))
def test_the_same_every_time(made: Record) -> None:
    first, again = (make_plan(problem(made["causes"], made["checks"])) for _ in range(2))
    assert as_data(first) == as_data(again)


# -- each cause checked and mended alone -----------------------------------------------------------------------

priced = st.lists(st.tuples(st.integers(1, 20), st.integers(1, 30)), min_size=1, max_size=6)


@given(priced)
def test_a_list_is_by_probability_over_minutes(pairs: list[tuple[int, int]]) -> None:
    total = sum(weight for weight, _ in pairs)
    entries = [{"cause": f"c{i}", "probability": w / total, "minutes": m} for i, (w, m) in enumerate(pairs)]
    made = from_list(entries)
    plan = make_plan(made)
    best = min(in_order(order) for order in permutations(made.causes))
    assert plan.expected == pytest.approx(best)
    rates = {f"c{i}": w / m for i, (w, m) in enumerate(pairs)}
    assert list(plan.order) == sorted(rates, key=lambda name: -rates[name])  # stable: ties in the order of the list


@given(some_causes(most=6, electrician=False, waiting=False))
def test_without_checks_remedies_are_by_probability_over_minutes(made: list[Record]) -> None:
    whole = problem(made)
    assert make_plan(whole).expected == pytest.approx(min(in_order(order) for order in permutations(whole.causes)))


@given(priced)
def test_searching_finds_probability_over_minutes_too(pairs: list[tuple[int, int]]) -> None:
    """The same list searched as a problem without checks."""
    total = sum(weight for weight, _ in pairs)
    entries = [{"cause": f"c{i}", "probability": w / total, "minutes": m} for i, (w, m) in enumerate(pairs)]
    listed = make_plan(from_list(entries))
    searched = make_plan(Problem(from_list(entries).causes))
    assert searched.expected == pytest.approx(listed.expected)
    assert searched.order == listed.order


def test_each_step_of_a_list_says_what_is_left() -> None:
    entries = [{"cause": "a", "probability": 0.3, "minutes": 10}, {"cause": "b", "probability": 0.7, "minutes": 20}]
    plan = make_plan(from_list(entries))
    assert [step.cause for step in plan.steps] == ["b", "a"]
    assert [step.left for step in plan.steps] == pytest.approx([1, 0.3])
    assert [step.expected for step in plan.steps] == pytest.approx([23, 10])


def test_a_cause_of_no_minutes_comes_first_and_one_of_no_probability_last() -> None:
    entries = [
        {"cause": "never", "probability": 0, "minutes": 1},
        {"cause": "a", "probability": 1, "minutes": 10},
        {"cause": "free", "probability": 0, "minutes": 0},
    ]
    plan = make_plan(from_list(entries))
    assert plan.order == ("free", "a", "never")
    assert plan.expected == pytest.approx(10)


# -- worked by hand --------------------------------------------------------------------------------------------


def test_a_check_is_worth_its_minutes_only_where_it_saves_more() -> None:
    two = [cause("a", "often", 10), cause("b", "often", 10)]
    assert root(two, [check("k", 4, "a", "b")]).do == "check"  # 14 against 15
    assert root(two, [check("k", 6, "a", "b")]).do == "mend"  # 16 against 15


def test_set_ups_are_paid_once() -> None:
    four = [cause(letter, "often", 100) for letter in "abcd"]
    listed = [check("first", 1, "a b", "c d", needs=("ladder",)), check("second", 1, "a c", "b d", needs=("ladder",))]
    tree = root(four, listed)
    assert tree.set_up == ("ladder",)
    assert all(branch.next.set_up == () for branch in tree.branches)
    assert tree.expected == pytest.approx(4 + 1 + 1 + 100)


def test_mending_may_come_first_to_make_a_check_possible() -> None:
    """No check says anything about `a`; once it is ruled out, one tells the dear causes apart."""
    five = [cause("a", "often", 1), *(cause(letter, "often", 60) for letter in "bcde")]
    tree = root(five, [check("k", 1, "b c", "d e")])
    assert tree.id == "a"
    assert tree.fails is not None
    assert tree.fails.id == "k"


def test_a_check_that_a_cause_left_is_not_in_is_not_done() -> None:
    three = [cause("a", "often", 50), cause("b", "often", 50), cause("c", "rare", 50)]
    assert root(three, [check("k", 1, "a", "b")]).do == "mend"


def test_an_electricians_remedy_ends_in_the_escalation() -> None:
    tree = root(
        [cause("a", "often", 10), cause("mains", "often", 10, who="electrician")], [check("k", 1, "a", "mains")]
    )
    ends = {branch.result: branch.next for branch in tree.branches}
    assert (ends["r0"].do, ends["r1"].do, ends["r1"].why) == ("mend", "end", "not-ours")
    assert root([cause("mains", who="electrician")], []).why == "not-ours"


def test_of_several_electricians_causes_none_is_looked_for() -> None:
    two = [cause("a", who="electrician"), cause("b", who="electrician")]
    assert root(two, [check("k", 1, "a", "b")]).do == "end"


def test_a_check_that_can_mislead_leaves_both_causes_likelier_and_less_likely() -> None:
    two = [cause("a", "often", 60), cause("b", "often", 60)]
    listed = [
        check(
            "k",
            1,
            {"leaves": ["a", "b"], "likelihood": {"a": 0.9, "b": 0.2}},
            {"leaves": ["a", "b"], "likelihood": {"a": 0.1, "b": 0.8}},
        )
    ]
    tree = root(two, listed)
    first, second = (branch.next for branch in tree.branches)
    assert dict(first.left)["a"] == pytest.approx(0.9 / 1.1)
    assert (first.id, second.id) == ("a", "b")
    assert tree.expected == pytest.approx(1 + 60 + 60 * (0.2 + 0.1) / 2)


def test_what_no_likelihood_is_said_for_is_split_evenly() -> None:
    two = [cause("a", "often", 60), cause("b", "often", 60)]
    tree = root(two, [check("k", 1, "a b", "b")])
    assert [branch.probability for branch in tree.branches] == pytest.approx([0.75, 0.25])
    some = [check("k", 1, {"leaves": ["a", "b"], "likelihood": {"b": 0.2}}, "b", "b")]
    assert problem(two, some).checks[0].results[1].chance == pytest.approx((0, 0.4))


def test_a_result_that_passes_the_fault_on_is_no_bargain() -> None:
    """Going to another fault with the causes left costs as much as mending them would, so it is not sought."""
    two = [cause("a", "often", 10), cause("b", "often", 10)]
    away = check("away", 1, {"leaves": ["a"], "go": "another"}, {"leaves": ["b"], "go": "another"})
    assert root(two, [away, check("k", 1, "a", "b")]).id == "away"  # a tie: the record's order
    assert root(two, [away | {"minutes": 2}, check("k", 1, "a", "b")]).id == "k"


def test_the_proof_that_fails_rules_its_cause_out() -> None:
    tree = root([cause("a", "often", 5), cause("b", "rare", 5)], [])
    assert tree.id == "a"
    assert tree.fails is not None
    assert tree.fails.id == "b"
    assert tree.fails.fails is not None
    assert tree.fails.fails.why == "none-left"


# -- ties ------------------------------------------------------------------------------------------------------


def test_a_tie_goes_to_looking_before_touching() -> None:
    two = [cause("a", "often", 50), cause("b", "often", 50)]
    touching = check("touch", 1, "a", "b", needs=("cover-open",), restore="Close it.")
    assert root(two, [touching, check("look", 2, "a", "b")]).id == "look"
    assert root(two, [check("touch", 2, "a", "b", restore="Close it."), check("look", 2, "a", "b")]).id == "look"
    assert root([cause("a", "often", 10), cause("b", "often", 10)], [check("k", 5, "a", "b")]).do == "check"


def test_a_tie_goes_to_the_records_own_order() -> None:
    two = [cause("a", "often", 50), cause("b", "often", 50)]
    assert root(two, [check("one", 1, "a", "b"), check("other", 1, "b", "a")]).id == "one"
    assert root(two, [check("other", 1, "b", "a"), check("one", 1, "a", "b")]).id == "other"
    assert root(two, []).id == "a"


def test_rates_that_differ_only_by_rounding_are_a_tie() -> None:
    entries = [{"cause": "a", "probability": 0.1, "minutes": 10}, {"cause": "b", "probability": 0.3, "minutes": 30}]
    rest = [{"cause": "c", "probability": 0.6, "minutes": 60}]
    assert make_plan(from_list(entries + rest)).order == ("a", "b", "c")
    assert make_plan(from_list(rest + entries[::-1])).order == ("c", "b", "a")


# -- devices and checks left out -------------------------------------------------------------------------------


def test_a_device_has_its_own_causes_and_frequencies() -> None:
    three = [
        cause("a", "rare", 10, by_device={"wired": "often"}),
        cause("b", "sometimes", 10),
        cause("c", "often", 10, only=["radio"]),
    ]
    shared = [check("k", 1, "a", "b c")]
    assert [one.weight for one in problem(three, shared).causes] == [1, 3, 6]
    wired = problem(three, shared, "wired")
    assert [(one.id, one.weight) for one in wired.causes] == [("a", 6), ("b", 3)]
    assert [result.leaves for result in wired.checks[0].results] == [0b01, 0b10]


def test_without_a_check_the_plan_is_another() -> None:
    two = [cause("a", "often", 50), cause("b", "often", 50)]
    whole = problem(two, [check("one", 1, "a", "b"), check("other", 3, "a", "b")])
    plans = [make_plan(whole), make_plan(whole.without(["one"])), make_plan(whole.without(["one", "other"]))]
    assert [plan.order[0] for plan in plans] == ["one", "other", "a"]
    assert plans[0].expected < plans[1].expected < plans[2].expected


def test_no_cause_at_all_ends_at_once() -> None:
    plan = make_plan(problem([cause("a", only=["radio"])], [check("k", 1, "a", "a")], "wired"))
    assert plan.tree is not None
    assert (plan.tree.do, plan.tree.why, plan.order, plan.expected) == ("end", "none-left", (), 0)


# -- size ------------------------------------------------------------------------------------------------------


def test_twelve_causes_and_twelve_checks_are_solved_exactly_looking_at_few_states() -> None:
    """Both bounds at work: of the 4,096 sets of causes times 64 sets of set-ups only some thousands are looked at."""
    letters = "abcdefghijkl"
    causes = [cause(letter, ("often", "sometimes", "rare")[i % 3], 5 + 7 * i % 11) for i, letter in enumerate(letters)]
    needs = (("ladder",), ("cover-open",), ("meter",), ("ladder", "meter"))
    listed = []
    for k in range(12):
        parts = ["", ""]
        for i, letter in enumerate(letters):
            parts[(i * (2 * k + 1) + i * i // (k + 1)) % 2] += f"{letter} "
        listed.append(check(f"k{k}", 1 + k % 5, *parts, needs=needs[k % 4]))
    moves = Moves(problem(causes, listed))
    exact = Exact(moves)
    exact.value(moves.start())
    assert make_plan(problem(causes, listed)).exact
    assert exact.states < 20_000
