"""Plans for problems too large to be solved exactly, and how far from the best they may be.

The plan looks one action ahead: it takes the action after which repairing what is left, by probability over minutes,
would cost least together with the action itself; remedies that wait for others wait here too. So it is never worse
than repairing alone. As soon as so few causes are left that the rest can be solved exactly, it is. A branch does only
so many misleading checks (see `compare`). Where doing the checks by time alone or by frequency alone costs less than
that, it is the plan.

The lower bound parts the causes into groups small enough to be solved exactly, each as if the fault were known to be
in it, and every misleading check told each of its causes for sure. No plan for all causes costs a group less than
the best plan for that group alone, and surer checks never cost more, so the groups' costs, each by its probability,
are together a bound on every plan.
"""

from __future__ import annotations

from dataclasses import replace
from math import prod

from latchside.order.compare import Choose, by_frequency, by_time, cost, offered
from latchside.order.exact import END, SAME, Exact
from latchside.order.problem import Check, Problem, Result
from latchside.order.states import Moves, State, bits

REST_WORK = 25_000
"""What is left is solved exactly up to this size (in the measure of `Moves.size`, times the results of the misleading
checks done, since there are so many rests); groups of the bound likewise."""


class Ahead:
    """The action that looks best one action ahead."""

    def __init__(self, moves: Moves, rest_work: float = REST_WORK) -> None:
        self.moves = moves
        self._rest_work = rest_work
        self._exact = Exact(moves)
        self._chosen: dict[State, int] = {}

    def choose(self, state: State) -> int:
        """The action to take."""
        cached = self._chosen.get(state)
        if cached is None:
            shares = prod(len(self.moves.problem.checks[k].results) for k, _ in state[2])
            small = self.moves.size(state[0], state[2]) * shares <= self._rest_work
            cached = self._chosen[state] = self._exact.choose(state) if small else self._look(state)
        return cached

    def _look(self, state: State) -> int:
        left, up, seen = state
        moves, total = self.moves, self.moves.weight(left, seen)
        tried: list[tuple[float, int, int]] = []
        for k in offered(moves, state, small=False):
            rests = (weight * moves.mending(child[0], child[2])[0] for _, weight, child, _ in moves.branches(state, k))
            cost = moves.paid(k, up) * total + sum(rests)
            tried.append((cost, int(moves.problem.checks[k].touches), k))
        for i in moves.open(left):
            child = moves.ruled_out(state, i)
            rest = (total - moves.weights(seen)[i]) * moves.mending(child[0], child[2])[0]
            tried.append((moves.problem.causes[i].minutes * total + rest, 1, moves.checks + i))
        if not tried or not moves.mendable(left):
            return END
        least = min(cost for cost, _, _ in tried)
        return min((touches, action) for cost, touches, action in tried if cost <= least + SAME * total)[1]


def best_of(moves: Moves, rest_work: float = REST_WORK) -> Choose:
    """The cheapest of looking one action ahead, by time alone and by frequency alone."""
    choices = (Ahead(moves, rest_work).choose, by_time(moves, small=False), by_frequency(moves, small=False))
    return min(choices, key=lambda choose: cost(moves, choose, moves.start(), {}))


def lower_bound(problem: Problem, rest_work: float = REST_WORK) -> float:
    """Expected minutes that no plan for the problem can be under."""
    moves = Moves(replace(problem, checks=tuple(_sure(check) for check in problem.checks)))
    exact = Exact(moves)
    left, _, _ = moves.start()
    owed = 0.0
    for group in _groups(moves, left, rest_work):
        owed += moves.weight(group, ()) * exact.value(moves.state(group, 0, ()))
    return owed / moves.weight(left, ())


def _groups(moves: Moves, left: int, rest_work: float) -> list[int]:
    weights = moves.weights(())
    groups, group = [], 0
    for i in sorted(bits(left), key=lambda i: -weights[i]):
        if group and moves.size(group | 1 << i, ()) > rest_work:
            groups.append(group)
            group = 0
        group |= 1 << i
    return [*groups, group]


def _sure(check: Check) -> Check:
    """A misleading check as if each cause had a result of its own."""
    if not check.misleads:
        return check
    causes = len(check.results[0].chance)
    results = (Result(str(i), 1 << i, tuple(float(i == other) for other in range(causes))) for i in bits(check.covers))
    return replace(check, results=tuple(results))
