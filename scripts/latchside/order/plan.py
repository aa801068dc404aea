"""A plan: what to do first, and after each answer what next, down to a remedy or the escalation.

A plan carries the put-back of a check on every branch below it. A cover stays off while the next check needs
protection off in the same way; otherwise protection is put back before the next action, and always before a remedy
is proved or the fault is passed on.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Literal

from latchside.order.compare import Compared, compared, cost, in_order
from latchside.order.exact import END, MOST_WORK, Exact
from latchside.order.heuristic import REST_WORK, best_of, lower_bound
from latchside.order.problem import Cause, Problem
from latchside.order.states import Moves, State, bits, rate

Why = Literal["go", "result", "does-not-fit", "not-ours", "none-left"]
"""Why a branch ends: the result leads to another fault; it ends in the escalation; it fits no cause left; the
remedy is an electrician's; no cause is left."""


@dataclass(frozen=True)
class Branch:
    """What follows one result of a check."""

    result: str
    probability: float
    next: Node


@dataclass(frozen=True)
class Node:
    """One point of a run. `id` is that of the check, of the cause to repair, or of the fault to go to."""

    do: Literal["check", "mend", "end"]
    id: str | None
    reached: float
    left: tuple[tuple[str, float], ...]
    expected: float
    minutes: float = 0.0
    set_up: tuple[str, ...] = ()
    set_up_minutes: float = 0.0
    restore: tuple[str, ...] = ()
    branches: tuple[Branch, ...] = ()
    fails: Node | None = None
    why: Why | None = None

    @property
    def below(self) -> tuple[Node, ...]:
        """The points this one may lead to."""
        return tuple(branch.next for branch in self.branches) + ((self.fails,) if self.fails else ())


@dataclass(frozen=True)
class Step:
    """One cause of a plain list in its place: the probability that it is reached, and the minutes expected from it."""

    cause: str
    probability: float
    minutes: float
    left: float
    expected: float


@dataclass(frozen=True)
class Plan:
    """A plan for a problem. It has a tree, or, for a plain list, steps."""

    problem: Problem
    order: tuple[str, ...]
    expected: float
    bound: float
    exact: bool
    tree: Node | None = None
    steps: tuple[Step, ...] = ()

    @property
    def gap(self) -> float:
        """How many minutes above the best possible the plan may be."""
        return max(0.0, self.expected - self.bound)

    @cached_property
    def compared(self) -> Compared:
        """What other orders would cost. It takes long, and no page shows it: it is worked out when it is asked for."""
        if self.problem.plain:
            return _otherwise(self.problem)
        if not self.problem.causes:
            return Compared(0.0, 0.0, 0.0)
        return compared(Moves(self.problem), small=self.exact)


def make_plan(problem: Problem, *, most_work: float = MOST_WORK, rest_work: float = REST_WORK) -> Plan:
    """The plan of least expected minutes; for a problem larger than `most_work`, a good one with its gap."""
    if problem.plain:
        return _listed(problem)
    moves = Moves(problem)
    start = moves.start()
    if not problem.causes:
        nothing = _Builder(moves, lambda _: END).build()
        return Plan(problem, (), 0.0, 0.0, True, nothing)
    small = moves.size(start[0], start[2]) <= most_work
    tree = _Builder(moves, Exact(moves).choose if small else best_of(moves, rest_work)).build()
    bound = tree.expected if small else min(lower_bound(problem, rest_work), tree.expected)
    return Plan(problem, _order(problem, tree), tree.expected, bound, small, tree)


def _listed(problem: Problem) -> Plan:
    """The plan of a plain list: by probability over minutes, ties in the order of the list."""
    by_rate = _by_rate(problem)
    left = sum(cause.weight for cause in by_rate)
    owed = in_order(by_rate) * left
    best, steps = in_order(by_rate), []
    for cause in by_rate:
        expected = max(0.0, owed / left) if left > 0 else 0.0
        steps.append(Step(cause.id, cause.weight, cause.minutes, max(0.0, left), expected))
        owed -= cause.minutes * left
        left -= cause.weight
    return Plan(problem, tuple(cause.id for cause in by_rate), best, best, True, steps=tuple(steps))


def _by_rate(problem: Problem) -> list[Cause]:
    return sorted(problem.causes, key=lambda cause: -rate(cause.weight, cause.minutes))


def _otherwise(problem: Problem) -> Compared:
    """What other orders of a plain list cost."""
    return Compared(
        in_order(sorted(problem.causes, key=lambda cause: -cause.weight)),
        in_order(sorted(problem.causes, key=lambda cause: cause.minutes)),
        in_order(reversed(_by_rate(problem))),
    )


class _Builder:
    """Lays a chosen action in every state out as a tree."""

    def __init__(self, moves: Moves, choose: Callable[[State], int]) -> None:
        self.moves = moves
        self.choose = choose
        self._known: dict[State, float] = {}

    def build(self) -> Node:
        """The tree from the start."""
        return self._node(self.moves.start(), 1.0, ())

    def _node(self, state: State, reached: float, pending: tuple[int, ...]) -> Node:
        if not state[0]:
            return self._end("none-left", reached, state, pending)
        action = self.choose(state)
        if action == END:
            return self._end("not-ours", reached, state, pending)
        if action >= self.moves.checks:
            return self._mend(state, action - self.moves.checks, reached, pending)
        return self._check(state, action, reached, pending)

    def _mend(self, state: State, cause: int, reached: float, pending: tuple[int, ...]) -> Node:
        one = self.moves.problem.causes[cause]
        fails = 1.0 - self.moves.weights(state[2])[cause] / self.moves.weight(state[0], state[2])
        return Node(
            "mend", one.id, reached, self._left(state), self._expected(state), one.minutes,
            restore=self._lines(pending), fails=self._node(self.moves.ruled_out(state, cause), reached * fails, ()),
        )  # fmt: skip

    def _check(self, state: State, k: int, reached: float, pending: tuple[int, ...]) -> Node:
        problem, up = self.moves.problem, state[1]
        check = problem.checks[k]
        stays = tuple(one for one in pending if self._touched(one) & self._touched(k))
        due = tuple(one for one in pending if one not in stays)
        after = (*stays, k) if check.restore else stays
        new = check.needs & ~up
        return Node(
            "check", check.id, reached, self._left(state), self._expected(state), check.minutes,
            tuple(one.id for i, one in enumerate(problem.set_ups) if new >> i & 1), self.moves.set_up_minutes[new],
            self._lines(due), self._results(state, k, reached, after),
        )  # fmt: skip

    def _results(self, state: State, k: int, reached: float, pending: tuple[int, ...]) -> tuple[Branch, ...]:
        total = self.moves.weight(state[0], state[2])
        possible = {number: (weight, child) for number, weight, child, _ in self.moves.branches(state, k)}
        found = []
        for number, result in enumerate(self.moves.problem.checks[k].results):
            weight, child = possible.get(number, (0.0, (0, state[1], ())))
            share = weight / total
            if result.ends:
                why: Why = "go" if result.go else "result"
                node = self._end(why, reached * share, child, pending, result.go)
            elif number in possible:
                node = self._node(child, reached * share, pending)
            else:
                node = self._end("does-not-fit", 0.0, child, pending)
            found.append(Branch(result.id, share, node))
        return tuple(found)

    def _end(self, why: Why, reached: float, state: State, pending: tuple[int, ...], to: str | None = None) -> Node:
        expected = self.moves.mending(state[0], state[2])[0] if state[0] else 0.0
        return Node("end", to, reached, self._left(state), expected, restore=self._lines(pending), why=why)

    def _left(self, state: State) -> tuple[tuple[str, float], ...]:
        left, _, seen = state
        weights, total = self.moves.weights(seen), self.moves.weight(left, seen)
        return tuple((self.moves.problem.causes[i].id, weights[i] / total) for i in bits(left))

    def _expected(self, state: State) -> float:
        return cost(self.moves, self.choose, state, self._known)

    def _touched(self, k: int) -> int:
        needs = self.moves.problem.checks[k].needs
        return sum(1 << i for i, one in enumerate(self.moves.problem.set_ups) if one.touches and needs >> i & 1)

    def _lines(self, checks: tuple[int, ...]) -> tuple[str, ...]:
        return tuple(self.moves.problem.checks[k].id for k in reversed(checks))


def _order(problem: Problem, tree: Node) -> tuple[str, ...]:
    """Every check and remedy of the plan, by how probable it is that a run comes to it, then by how soon."""
    reached: dict[tuple[str, str], tuple[float, int]] = {}
    level, depth = [tree], 0
    while level:
        for node in level:
            if node.do != "end" and node.id is not None:
                share, first = reached.get((node.do, node.id), (0.0, depth))
                reached[node.do, node.id] = (share + node.reached, first)
        level, depth = [below for node in level for below in node.below], depth + 1
    place = [("check", check.id) for check in problem.checks] + [("mend", cause.id) for cause in problem.causes]
    ranked = sorted(reached, key=lambda one: (-round(reached[one][0], 9), reached[one][1], place.index(one)))
    return tuple(id_ for _, id_ in ranked)


def as_data(plan: Plan) -> dict[str, Any]:
    """The plan as plain values, for JSON."""
    total = sum(cause.weight for cause in plan.problem.causes) or 1.0
    data: dict[str, Any] = {
        "order": list(plan.order),
        "expected_minutes": _figure(plan.expected),
        "exact": plan.exact,
        "lower_bound": _figure(plan.bound),
        "gap": _figure(plan.gap),
        "compared": {name: _figure(value) for name, value in vars(plan.compared).items()},
        "fault": plan.problem.fault,
        "device": plan.problem.device,
        "causes": [
            {"id": one.id, "probability": _figure(one.weight / total), "minutes": one.minutes, "who": one.who}
            for one in plan.problem.causes
        ],
        "set_ups": [{"id": one.id, "minutes": one.minutes, "touches": one.touches} for one in plan.problem.set_ups],
    }
    if plan.problem.plain:
        data["steps"] = [{name: _figure(value) for name, value in vars(step).items()} for step in plan.steps]
    data["tree"] = _node_data(plan.tree) if plan.tree else None
    return data


def _node_data(node: Node) -> dict[str, Any]:
    data: dict[str, Any] = {
        "do": node.do,
        "id": node.id,
        "probability": _figure(node.reached),
        "expected_minutes": _figure(node.expected),
        "left": [{"cause": cause, "probability": _figure(share)} for cause, share in node.left],
        "restore": list(node.restore),
    }
    if node.do == "end":
        return data | {"why": node.why}
    data["minutes"] = node.minutes
    if node.fails:
        return data | {"fails": _node_data(node.fails)}
    data |= {"set_up": list(node.set_up), "set_up_minutes": node.set_up_minutes}
    data["results"] = [
        {"id": one.result, "probability": _figure(one.probability), "next": _node_data(one.next)}
        for one in node.branches
    ]
    return data


def _figure(value: Any) -> Any:
    return round(value, 6) + 0.0 if isinstance(value, float) else value
