"""What the plans say about the library: which steps prevent most, which checks settle most, how firm the orders are.

Every fault counts once, as if each came equally often, because nothing here says how often a fault comes at all.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import combinations

from latchside.library import Library, Record
from latchside.order import Plan, Problem, make_plan
from latchside.order.plan import Node
from latchside.pages.fault_plan import plan_of
from latchside.reads import EVERY, note

FACTORS = (0.5, 2.0)
"""What each guessed frequency is multiplied by, one at a time."""


def probabilities(problem: Problem) -> dict[str, float]:
    """The probability of every cause before the first check."""
    total = sum(cause.weight for cause in problem.causes)
    return {cause.id: cause.weight / total for cause in problem.causes}


def minutes_for(plan: Plan, cause: str) -> float:
    """Expected minutes of a plan when this cause is behind the fault, up to the fault being gone or passed on."""
    number = [one.id for one in plan.problem.causes].index(cause)
    chances = {check.id: {one.id: one.chance[number] for one in check.results} for check in plan.problem.checks}
    return _minutes(plan.tree, cause, chances) if plan.tree else 0.0


def _minutes(node: Node, cause: str, chances: Mapping[str, Mapping[str, float]]) -> float:
    if node.do == "end":
        return node.expected
    spent = node.minutes + node.set_up_minutes
    if node.do == "mend":
        return spent if node.id == cause or node.fails is None else spent + _minutes(node.fails, cause, chances)
    shares = chances[node.id or ""]
    return spent + sum(
        shares[branch.result] * _minutes(branch.next, cause, chances)
        for branch in node.branches
        if shares[branch.result]
    )


@dataclass(frozen=True)
class Prevented:
    """A procedure step, the fault minutes it prevents, and the faults and causes it prevents."""

    step: str
    minutes: float
    causes: tuple[tuple[Record, Mapping[str, object]], ...]


def prevented(library: Library) -> list[Prevented]:
    """Every step that prevents causes, the one that saves most minutes first."""
    minutes: dict[str, float] = {}
    causes: dict[str, list[tuple[Record, Mapping[str, object]]]] = {}
    for fault in library.of("fault"):
        plan = plan_of(library, fault)
        share = probabilities(plan.problem)
        for cause in fault["causes"]:
            if step := cause.get("prevented_by"):
                minutes[step] = minutes.get(step, 0.0) + share[cause["id"]] * minutes_for(plan, cause["id"])
                causes.setdefault(step, []).append((fault, cause))
    ranked = sorted(minutes, key=lambda step: (-round(minutes[step], 9), step))
    return [Prevented(step, minutes[step], tuple(causes[step])) for step in ranked]


@dataclass(frozen=True)
class Settling:
    """A check, under the words of the fault it settles most, and the faults it stands in, each with its share."""

    check: Mapping[str, object]
    fault: Record
    share: float
    faults: tuple[Record, ...]


def settling(library: Library, most: int = 10) -> list[Settling]:
    """The checks that most often leave just one cause, or lead out, over the plans of all faults."""
    shares: dict[str, dict[str, float]] = {}
    for fault in library.of("fault"):
        for node in every_node(plan_of(library, fault).tree):
            if node.do == "check" and node.id:
                settled = sum(b.probability for b in node.branches if len(b.next.left) == 1 or b.next.why == "go")
                here = shares.setdefault(node.id, {})
                here[fault.id] = here.get(fault.id, 0.0) + node.reached * settled
    ranked = sorted(shares, key=lambda one: (-round(sum(shares[one].values()), 9), one))[:most]
    return [_settling(library, id_, shares[id_]) for id_ in ranked]


def _settling(library: Library, id_: str, shares: Mapping[str, float]) -> Settling:
    by_share = sorted(shares, key=lambda one: (-shares[one], one))
    faults = tuple(library.records["fault"][one] for one in by_share)
    check = next(one for one in faults[0]["checks"] if one["id"] == id_)
    return Settling(check, faults[0], sum(shares.values()), faults)


def every_node(node: Node | None) -> Iterator[Node]:
    """A point and all below it."""
    if node:
        yield node
        for below in node.below:
            yield from every_node(below)


@dataclass(frozen=True)
class Firmness:
    """How firm an order is when one guessed frequency at a time halves or doubles.

    `first` counts the changes after which another action comes first, `of` all changes tried; `pairs` is the largest
    share of pairs in the order that change places; `lost` the most minutes that keeping to the printed plan costs.
    """

    fault: Record
    first: int
    of: int
    pairs: float
    lost: float


def firmness(library: Library) -> tuple[Firmness, ...]:
    """How firm the order of every fault is, the least firm first."""
    note(("fault", EVERY, EVERY))
    return _firm(library)


@lru_cache(maxsize=4)
def _firm(library: Library) -> tuple[Firmness, ...]:
    result = [_firmness(library, fault) for fault in library.of("fault")]
    return tuple(sorted(result, key=lambda one: (-round(one.lost, 6), -one.pairs, one.fault.id)))


def _firmness(library: Library, fault: Record) -> Firmness:
    plan = plan_of(library, fault)
    kept = {cause.id: minutes_for(plan, cause.id) for cause in plan.problem.causes}
    first, pairs, lost, of = 0, 0.0, 0.0, 0
    for changed in _changed(plan.problem):
        other = make_plan(changed)
        of += 1
        first += bool(plan.tree and other.tree and (plan.tree.do, plan.tree.id) != (other.tree.do, other.tree.id))
        pairs = max(pairs, _swapped(plan.order, other.order))
        stays = sum(share * kept[cause] for cause, share in probabilities(changed).items())
        lost = max(lost, stays - other.expected)
    return Firmness(fault, first, of, pairs, max(0.0, lost))


def _changed(problem: Problem) -> Iterator[Problem]:
    for number, cause in enumerate(problem.causes):
        for factor in FACTORS:
            other = replace(cause, weight=cause.weight * factor)
            yield replace(problem, causes=(*problem.causes[:number], other, *problem.causes[number + 1 :]))


def _swapped(before: tuple[str, ...], after: tuple[str, ...]) -> float:
    """The share of pairs that stand in both orders and change places."""
    place = {id_: number for number, id_ in enumerate(after)}
    pairs = list(combinations([id_ for id_ in before if id_ in place], 2))
    return sum(place[a] > place[b] for a, b in pairs) / len(pairs) if pairs else 0.0
