"""What a plan costs, and what the same checks would cost in other orders.

The orders compared do a check wherever one tells the causes left apart, and repair where none does:

- by frequency alone: first the check that is the likeliest to leave just one cause, then the likeliest cause;
- by time alone: first the check of the least minutes (with the set-ups it still needs), then the shortest remedy;
- the worst order: the dearest of all orders of these checks, then of the remedies.

For a plain list that is: by probability, by minutes, and by the least probability over minutes.

Where a problem is too large to be solved exactly, the worst order is not searched, and a branch does at most
`MOST_MISLED` misleading checks whose results still matter, since each multiplies the branches.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from latchside.order.exact import END
from latchside.order.precedence import in_turn
from latchside.order.problem import Cause
from latchside.order.states import Moves, State

Choose = Callable[[State], int]

MOST_MISLED = 4
"""In a large problem: misleading checks in one branch whose results still matter."""


@dataclass(frozen=True)
class Compared:
    """Expected minutes of other orders; `worst_order` is None where the problem is too large to find it."""

    by_frequency: float
    by_time: float
    worst_order: float | None


def cost(moves: Moves, choose: Choose, state: State, known: dict[State, float]) -> float:
    """Expected minutes from a state when the actions are those chosen; `known` is filled on the way."""
    cached = known.get(state)
    if cached is None:
        cached = known[state] = _cost(moves, choose, state, known)
    return cached


def _cost(moves: Moves, choose: Choose, state: State, known: dict[State, float]) -> float:
    left, up, seen = state
    action, total = choose(state), moves.weight(left, seen)
    if action == END:
        return 0.0
    if action >= moves.checks:
        cause = action - moves.checks
        rest = total - moves.weights(seen)[cause]
        owed = moves.problem.causes[cause].minutes * total
        return (owed + (rest * cost(moves, choose, moves.ruled_out(state, cause), known) if rest else 0.0)) / total
    owed = moves.paid(action, up) * total
    for _, weight, child, ends in moves.branches(state, action):
        owed += weight * (moves.mending(child[0], child[2])[0] if ends else cost(moves, choose, child, known))
    return owed / total


def compared(moves: Moves, *, small: bool) -> Compared:
    """What the other orders cost; `small` where the problem is small enough to be solved exactly."""
    start = moves.start()
    return Compared(
        cost(moves, by_frequency(moves, small=small), start, {}),
        cost(moves, by_time(moves, small=small), start, {}),
        Dearest(moves).value(start) if small else None,
    )


def by_frequency(moves: Moves, *, small: bool) -> Choose:
    """The order by frequency alone."""
    return lambda state: _by_frequency(moves, state, offered(moves, state, small=small))


def by_time(moves: Moves, *, small: bool) -> Choose:
    """The order by time alone."""
    return lambda state: _by_time(moves, state, offered(moves, state, small=small))


def offered(moves: Moves, state: State, *, small: bool) -> tuple[int, ...]:
    """The checks that tell causes left apart; in a large problem, those that mislead only so often in a branch."""
    left, _, seen = state
    checks = moves.useful(left, seen)
    if small or len(seen) < MOST_MISLED:
        return checks
    return tuple(k for k in checks if not moves.problem.checks[k].misleads)


def _by_frequency(moves: Moves, state: State, checks: tuple[int, ...]) -> int:
    left, _, seen = state
    first = moves.open(left)
    if not moves.mendable(left) or not (checks or first):
        return END
    if checks:
        return min(checks, key=lambda k: (-_settles(moves, state, k), k))
    weights = moves.weights(seen)
    return moves.checks + min(first, key=lambda i: (-weights[i], i))


def _settles(moves: Moves, state: State, k: int) -> float:
    share = sum(weight for _, weight, child, _ in moves.branches(state, k) if child[0].bit_count() == 1)
    return round(share / moves.weight(state[0], state[2]), 12)


def _by_time(moves: Moves, state: State, checks: tuple[int, ...]) -> int:
    left, up, _ = state
    first = moves.open(left)
    if not moves.mendable(left) or not (checks or first):
        return END
    if checks:
        return min(checks, key=lambda k: (moves.paid(k, up), k))
    return moves.checks + min(first, key=lambda i: (moves.problem.causes[i].minutes, i))


class Dearest:
    """The worst order: a check wherever one tells causes apart, the dearest first, else a remedy, likewise."""

    def __init__(self, moves: Moves) -> None:
        self.moves = moves
        self._known: dict[State, float] = {}

    def value(self, state: State) -> float:
        """The most expected minutes from a state."""
        cached = self._known.get(state)
        if cached is None:
            cached = self._known[state] = self._solve(state)
        return cached

    def _solve(self, state: State) -> float:
        moves, (left, up, seen) = self.moves, state
        checks, first = moves.useful(left, seen), moves.open(left)
        if not moves.mendable(left):
            return 0.0
        if not moves.hopeful(left, seen):
            return self._remedies(state)
        total, most = moves.weight(left, seen), 0.0
        for k in checks:
            owed = moves.paid(k, up) * total
            for _, weight, child, ends in moves.branches(state, k):
                owed += weight * (moves.mending(child[0], child[2])[0] if ends else self.value(child))
            most = max(most, owed)
        for i in () if checks else first:
            rest = total - moves.weights(seen)[i]
            most = max(most, moves.problem.causes[i].minutes * total + rest * self.value(moves.ruled_out(state, i)))
        return most / total

    def _remedies(self, state: State) -> float:
        left, _, seen = state
        """The dearest order of remedies is the best one turned round, of what waits for them turned round."""
        moves, weights = self.moves, self.moves.weights(seen)
        minutes = [cause.minutes for cause in moves.problem.causes]
        some = range(len(minutes))
        waiting = [sum(1 << j for j in some if moves.after[j] >> i & 1) for i in some]
        order = in_turn(moves.sure(left), weights, minutes, waiting)[::-1]
        return _in_turn([(weights[i], minutes[i]) for i in order], moves.weight(left, seen))


def in_order(causes: Iterable[Cause]) -> float:
    """Expected minutes of checking and repairing causes one by one, each paid when it is reached, the last one too."""
    pairs = [(cause.weight, cause.minutes) for cause in causes]
    return _in_turn(pairs, sum(weight for weight, _ in pairs))


def _in_turn(pairs: list[tuple[float, float]], total: float) -> float:
    owed, rest = 0.0, total
    for weight, minutes in pairs:
        owed += minutes * rest
        rest -= weight
    return owed / total if total else 0.0
