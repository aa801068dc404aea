"""The least expected minutes, found exactly by dynamic programming over the states.

The value of a state is the least over its actions: a check costs its minutes and missing set-ups, then what its
results cost, each by its probability; repairing a cause costs its remedy, then, by the probability that the proof
fails, what is left costs without that cause. Where no check tells the causes left apart, or could once some are ruled
out, repairing them by probability over minutes is best (Kadane and Simon; where remedies wait for each other see
`precedence`), and nothing need be searched.

Most of the work is saved by two lower bounds. What a state costs with every set-up in force is a bound on what it
costs without (a problem many times smaller, solved first); and under that, every cause costs its own remedy at
least, and every cause but one the first action too. Actions are tried in the order of their bounds, and given up as
soon as their bound is above the best found.
"""

from __future__ import annotations

from latchside.order.states import Moves, Seen, State, bits

END = -1
"""The action of a state in which nothing is left to do but to pass the fault on."""

MOST_WORK = 150_000
"""The largest problem that is solved exactly, in the measure of `Moves.size`. 12 causes and 12 checks are 49,152."""

SAME = 1e-9
"""Expected minutes that differ by less are a tie."""

_Option = tuple[float, int, tuple[tuple[float, State, float], ...]]
"""An action's lower bound, its place in a tie, and its branches: weight, state, and the bound used for it."""


class Exact:
    """The best action in every state of a problem."""

    def __init__(self, moves: Moves) -> None:
        self.moves = moves
        self._causes = moves.problem.causes
        self._cheapest = min((check.minutes for check in moves.problem.checks), default=0.0)
        self._best: dict[State, tuple[float, int]] = {}
        self._floors: dict[tuple[int, Seen], float] = {}

    @property
    def states(self) -> int:
        """How many states were looked at."""
        return len(self._best)

    def value(self, state: State) -> float:
        """The least expected minutes from here until the fault is gone."""
        return self._find(state)[0]

    def choose(self, state: State) -> int:
        """The action to take. A tie goes to looking before touching, then to the record's own order."""
        return self._find(state)[1]

    def _find(self, state: State) -> tuple[float, int]:
        cached = self._best.get(state)
        if cached is None:
            cached = self._best[state] = self._solve(state)
        return cached

    def _solve(self, state: State) -> tuple[float, int]:
        left, _, seen = state
        if not self.moves.hopeful(left, seen) or not self.moves.mendable(left):
            minutes, first = self.moves.mending(left, seen)
            return minutes, END if first is None else self.moves.checks + first
        total = self.moves.weight(left, seen)
        options = sorted([*self._checks(state, total), *self._mendings(state, total)])
        if not options:
            return 0.0, END
        best, slack = float("inf"), SAME * total
        tried: list[tuple[float, int]] = []
        for bound, tie, parts in options:
            if bound > best + slack:
                break
            value = bound
            for weight, child, least in parts:
                value += weight * (self._find(child)[0] - least)
                if value > best + slack:
                    break
            else:
                best = min(best, value)
                tried.append((value, tie))
        tie = min(tie for value, tie in tried if value <= best + slack)
        return best / total, tie % self._width

    @property
    def _width(self) -> int:
        return self.moves.checks + len(self._causes)

    def _checks(self, state: State, total: float) -> list[_Option]:
        moves, options = self.moves, list[_Option]()
        for k in moves.useful(state[0], state[2]):
            bound = moves.paid(k, state[1]) * total
            parts = []
            for _, weight, child, ends in moves.branches(state, k):
                least = moves.mending(child[0], child[2])[0] if ends else self._floor(child)
                bound += weight * least
                if not ends:
                    parts.append((weight, child, least))
            options.append((bound, k + self._width * moves.problem.checks[k].touches, tuple(parts)))
        return options

    def _mendings(self, state: State, total: float) -> list[_Option]:
        moves, options = self.moves, list[_Option]()
        weights = moves.weights(state[2])
        for i in moves.open(state[0]):
            child = moves.ruled_out(state, i)
            weight, least = total - weights[i], self._floor(child)
            bound = self._causes[i].minutes * total + weight * least
            options.append((bound, self._width + moves.checks + i, ((weight, child, least),)))
        return options

    def _floor(self, state: State) -> float:
        """A lower bound on the value of a state."""
        left, up, seen = state
        if up != self.moves.all_up:
            return self._find((left, self.moves.all_up, seen))[0]
        known = self._best.get(state)
        if known is not None:
            return known[0]
        cached = self._floors.get((left, seen))
        if cached is None:
            cached = self._floors[left, seen] = self._least(left, seen)
        return cached

    def _least(self, left: int, seen: Seen) -> float:
        weights, total = self.moves.weights(seen), self.moves.weight(left, seen)
        first_of = self.moves.open(left)
        remedies = sum(weights[i] * self._causes[i].minutes for i in bits(self.moves.sure(left)))
        if left.bit_count() == 1 or not first_of:
            return remedies / total
        first = min(self._causes[i].minutes * (total - weights[i]) for i in first_of)
        if self.moves.hopeful(left, seen):
            first = min(first, self._cheapest * total)
        return (remedies + first) / total
