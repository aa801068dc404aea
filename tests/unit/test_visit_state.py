"""What a list of entries means: a union in any order, undo, replacement, quarrels, and a clock that does not matter."""

from __future__ import annotations

from random import Random
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latchside.library.codes import looks_like_code
from latchside.visits.state import judge, merge, view

from ..each import each
from ..visits.make import CASES, DOOR, Entry, as_plain, entry, history, item, site, some_id

HISTORIES = st.builds(lambda seed, devices: history(Random(seed), devices), st.integers(0, 10**6), st.integers(1, 4))


def outcome(*entries: Entry, name: str = "gap") -> str | None:
    run = view(entries).runs.get(f"position|{DOOR}")
    return run.outcome(name) if run and name in run.items else None


@given(HISTORIES, st.randoms(use_true_random=False))
def test_merging_is_a_union_in_any_order_any_number_of_times(held: list[list[Entry]], chance: Random) -> None:
    together = merge(*held)
    shuffled = [one for entries in held for one in entries] * 2
    chance.shuffle(shuffled)
    assert merge(shuffled) == together
    assert merge(*reversed(held)) == together
    assert merge(together, *held) == together
    assert {one["id"] for one in together} == {one["id"] for entries in held for one in entries}
    if len(held) > 2:
        assert merge(merge(held[0], held[1]), *held[2:]) == merge(held[0], merge(*held[1:]))
    assert as_plain(view(shuffled)) == as_plain(view(together))


@given(HISTORIES, st.integers(0, 10**6))
def test_clocks_set_back_change_nothing(held: list[list[Entry]], seed: int) -> None:
    together = merge(*held)
    chance = Random(seed)
    wrong = [{**one, "at": f"{chance.randrange(1900, 2100)}-01-01T00:00:00.000+00:00"} for one in together]
    assert as_plain(view(wrong)) == as_plain(view(together))


@given(HISTORIES)
def test_nothing_of_either_is_lost(held: list[list[Entry]]) -> None:
    """What one device shows as an outcome is, after merging, shown, replaced by name, or taken back by name."""
    together = view(merge(*held))
    named = {id_ for one in together.ordered for id_ in (*one.get("after", ()), *one.get("undoes", ()))}
    shown = {head["id"] for run in together.runs.values() for heads in run.items.values() for head in heads}
    for entries in held:
        for run in view(entries).runs.values():
            for heads in run.items.values():
                for head in heads:
                    assert head["id"] in shown | named


def test_the_last_that_knew_of_the_others_stands() -> None:
    first = item(1, 1, outcome="problem", note="Too wide")
    second = item(2, 2, after=[some_id(1)])
    assert outcome(first) == "problem"
    assert outcome(first, second) == "done"
    assert outcome(second, first) == "done"


def test_two_that_did_not_know_of_each_other_both_stand() -> None:
    anna, ben = item(1, 5), item(2, 1, outcome="problem", note="Too wide", by="Ben")
    assert outcome(anna, ben) == "differs"
    assert outcome(anna, {**ben, "outcome": "done"}) == "done"
    settled = item(3, 6, after=[some_id(1), some_id(2)])
    assert outcome(anna, ben, settled) == "done"


def test_undo_brings_back_what_was_before() -> None:
    first = item(1, 1, outcome="problem", note="Too wide")
    second = item(2, 2, after=[some_id(1)])
    undo = entry("undo", 3, 3, undoes=[some_id(2)], reason="undo")
    redo = entry("undo", 4, 4, undoes=[some_id(3)], reason="undo")
    assert outcome(first, second, undo) == "problem"
    assert outcome(first, second, undo, redo) == "done"


def test_what_was_replaced_stays_replaced_when_the_middle_is_taken_back() -> None:
    chain = [item(1, 1, outcome="problem", note="x"), item(2, 2, after=[some_id(1)]), item(3, 3, after=[some_id(2)])]
    undo = entry("undo", 4, 4, undoes=[some_id(2)], reason="undo")
    assert outcome(*chain, undo) == "done"
    assert [one["id"] for one in view([*chain, undo]).runs[f"position|{DOOR}"].items["gap"]] == [some_id(3)]


def test_starting_anew_leaves_what_it_did_not_know_of() -> None:
    mine, theirs = item(1, 1), item(2, 1, item="offset", by="Ben")
    reset = entry("undo", 3, 2, undoes=[some_id(1)], reason="reset")
    assert outcome(mine, theirs, reset) is None
    assert outcome(mine, theirs, reset, name="offset") == "done"
    assert outcome(mine, theirs, reset, entry("undo", 4, 3, undoes=[some_id(3)], reason="undo")) == "done"


def test_nothing_reaches_forward_or_across() -> None:
    """An undo counts against earlier entries only, a replacement only about the same thing: a circle harms nothing."""
    one = entry("undo", 1, 1, undoes=[some_id(2)], reason="undo")
    two = entry("undo", 2, 2, undoes=[some_id(1)], reason="undo")
    assert view([one, two]).live == {some_id(2)}
    problem = item(3, 1, outcome="problem", note="x")
    other = item(4, 2, item="offset", after=[some_id(3)])
    assert outcome(problem, other) == "problem"
    assert outcome(item(5, 9), entry("undo", 6, 3, undoes=[some_id(5)], reason="undo")) == "done"


def test_the_visit_is_called_what_it_was_last_called() -> None:
    seen = view([site(1, 1), site(2, 2, site="Oak House", after=[some_id(1)])])
    assert seen.visit is not None
    assert seen.visit["site"] == "Oak House"


@pytest.mark.parametrize("case", CASES["judge"], ids=lambda case: case["about"])
def test_a_reading_is_judged(case: dict[str, Any]) -> None:
    expected = (
        None if case["ranges"] is None else {"words": "x", "unit": case["reading"]["unit"], "ranges": case["ranges"]}
    )
    assert judge(case["reading"], expected) == case["verdict"]


@each(("text", "warned"), CASES["code"])
def test_what_looks_like_a_code_is_seen(text: str, warned: bool) -> None:
    assert looks_like_code(text) is warned
