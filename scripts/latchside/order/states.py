"""States of a run, and what an action makes of them.

A state is what may still be and what is in force: the set of causes left as a bit mask, the set-ups in force as a
bit mask, and the results of those checks that mislead and still matter. Where no check misleads the last is empty:
the results so far have then done nothing but reduce the set of causes.

Two states that cannot differ in what is still to come are made one: a set-up that no check can need any more counts
as in force, and a misleading result is dropped once it neither weighs the causes left against each other nor keeps
its check from being done again.
"""

from __future__ import annotations

from latchside.order.precedence import bits, in_turn, rate, unblocked
from latchside.order.problem import Check, Problem

__all__ = ["Branch", "Moves", "Seen", "State", "bits", "rate"]

Seen = tuple[tuple[int, int], ...]
State = tuple[int, int, Seen]
Branch = tuple[int, float, State, bool]
"""A result's number, its weight, the state after it, and whether the run ends with it."""

FLAT = -1
"""In `Seen`: the check is done, and its result weighs nothing any more."""


class Moves:
    """The states and actions of one problem. Action k below the number of checks is check k; above, a repair."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.checks = len(problem.checks)
        self.all_up = (1 << len(problem.set_ups)) - 1
        self.set_up_minutes = [
            sum(one.minutes for i, one in enumerate(problem.set_ups) if up >> i & 1) for up in range(self.all_up + 1)
        ]
        self._soft = [check.misleads for check in problem.checks]
        self._covers = [check.covers for check in problem.checks]
        self._parts = [[(i, one.leaves, one.ends) for i, one in enumerate(check.results)] for check in problem.checks]
        self.after = [cause.after for cause in problem.causes]
        self._minutes = [cause.minutes for cause in problem.causes]
        self._mendable: dict[int, list[int]] = {}
        self._open: dict[int, list[int]] = {}
        self._weights: dict[Seen, tuple[float, ...]] = {(): tuple(cause.weight for cause in problem.causes)}
        self._weight: dict[tuple[int, Seen], float] = {}
        self._useful: dict[tuple[int, Seen], tuple[int, ...]] = {}
        self._hopeful: dict[tuple[int, Seen], bool] = {}
        self._needed: dict[int, int] = {}
        self._mend_minutes: dict[tuple[int, Seen], tuple[float, int | None]] = {}

    def start(self) -> State:
        """The state before the first check."""
        return self.state((1 << len(self.problem.causes)) - 1, 0, ())

    def state(self, left: int, up: int, seen: Seen) -> State:
        """The state, with all that can make no difference any more taken out."""
        needed = self._needed.get(left)
        if needed is None:
            needed = self._needed[left] = self._still_needed(left)
        return left, up | (self.all_up & ~needed), self._kept(left, seen) if seen else seen

    def weights(self, seen: Seen) -> tuple[float, ...]:
        """The weight of every cause after misleading results."""
        cached = self._weights.get(seen)
        if cached is None:
            check, result = seen[-1]
            before = self.weights(seen[:-1])
            chance = self.problem.checks[check].results[result].chance if result != FLAT else ()
            cached = tuple(w * c for w, c in zip(before, chance, strict=True)) if chance else before
            self._weights[seen] = cached
        return cached

    def weight(self, left: int, seen: Seen) -> float:
        """The weight of all causes left together."""
        cached = self._weight.get((left, seen))
        if cached is None:
            weights = self.weights(seen)
            cached = self._weight[left, seen] = sum(weights[i] for i in bits(left))
        return cached

    def useful(self, left: int, seen: Seen) -> tuple[int, ...]:
        """The checks that may be done and would tell causes left apart, in the record's order."""
        cached = self._useful.get((left, seen))
        if cached is None:
            done = {check for check, _ in seen}
            cached = tuple(
                k for k in range(self.checks) if not left & ~self._covers[k] and k not in done and self.tells(k, left)
            )
            self._useful[left, seen] = cached
        return cached

    def hopeful(self, left: int, seen: Seen) -> bool:
        """Whether a check tells causes left apart, or will once those it says nothing about are ruled out."""
        cached = self._hopeful.get((left, seen))
        if cached is None:
            done = {check for check, _ in seen}
            checks = (k for k in range(self.checks) if k not in done)
            cached = self._hopeful[left, seen] = any(self.tells(k, left & self._covers[k]) for k in checks)
        return cached

    def tells(self, k: int, left: int) -> bool:
        """Whether some result of check k changes what is thought of the causes in `left`."""
        if self._soft[k]:
            causes = tuple(bits(left))
            return any(len({result.chance[i] for i in causes}) > 1 for result in self.problem.checks[k].results)
        left &= self._covers[k]
        for _, part, _ in self._parts[k]:  # noqa: SIM110  (written out, since most of the time is spent here)
            if not left & ~part:
                return False
        return True

    def size(self, left: int, seen: Seen) -> float:
        """How large the problem from here is: the sets of causes, times the checks that can still tell them apart.

        A check that misleads multiplies the states besides: fully by its results where it misleads on every cause.
        """
        done = {check for check, _ in seen}
        checks, factor = 0, 1.0
        for k, check in enumerate(self.problem.checks):
            if k not in done and self.tells(k, left & self._covers[k]):
                checks += 1
                soft = sum(any(0 < result.chance[i] < 1 for result in check.results) for i in bits(left))
                factor *= 1 + len(check.results) * soft / left.bit_count()
        return float((1 << left.bit_count()) * checks) * factor

    def mendable(self, left: int) -> list[int]:
        """The causes left whose remedy may stand in a plan."""
        cached = self._mendable.get(left)
        if cached is None:
            cached = self._mendable[left] = [i for i in bits(left) if self.problem.causes[i].mendable]
        return cached

    def open(self, left: int) -> list[int]:
        """The causes left that may be repaired now: they wait for none that is left."""
        cached = self._open.get(left)
        if cached is None:
            cached = self._open[left] = [i for i in self.mendable(left) if not self.after[i] & left]
        return cached

    def sure(self, left: int) -> int:
        """The causes left that will be repaired if they are the fault, as a mask: none in their way is not ours."""
        return unblocked(sum(1 << i for i in self.mendable(left)), left, self.after)

    def paid(self, k: int, up: int) -> float:
        """Minutes of check k with the set-ups it needs that are not in force."""
        check: Check = self.problem.checks[k]
        return check.minutes + self.set_up_minutes[check.needs & ~up]

    def branches(self, state: State, k: int) -> list[Branch]:
        """The results check k can show, in the record's order."""
        left, up, seen = state
        up |= self.problem.checks[k].needs
        branches: list[Branch] = []
        for number, part, ends in self._parts[k]:
            part &= left
            if part:
                after = tuple(sorted((*seen, (k, number)))) if self._soft[k] else seen
                branches.append((number, self.weight(part, after), self.state(part, up, after), ends))
        return branches

    def ruled_out(self, state: State, cause: int) -> State:
        """The state when the proof after repairing a cause has failed."""
        return self.state(state[0] & ~(1 << cause), state[1], state[2])

    def mending(self, left: int, seen: Seen) -> tuple[float, int | None]:
        """Expected minutes of repairing the causes left in the best order, and the first to repair."""
        cached = self._mend_minutes.get((left, seen))
        if cached is None:
            weights = self.weights(seen)
            total = rest = self.weight(left, seen)
            spent = 0.0
            order = in_turn(self.sure(left), weights, self._minutes, self.after)
            for i in order:
                spent += self._minutes[i] * rest
                rest -= weights[i]
            cached = (spent / total if total else 0.0, order[0] if order else None)
            self._mend_minutes[left, seen] = cached
        return cached

    def _still_needed(self, left: int) -> int:
        needed = 0
        for k, check in enumerate(self.problem.checks):
            if check.needs & ~needed and self.tells(k, left & self._covers[k]):
                needed |= check.needs
        return needed

    def _kept(self, left: int, seen: Seen) -> Seen:
        kept = []
        causes = tuple(bits(left))
        for k, result in seen:
            if self.tells(k, left):
                chance = self.problem.checks[k].results[result].chance
                weighs = result != FLAT and len({chance[i] for i in causes}) > 1
                kept.append((k, result if weighs else FLAT))
        return tuple(kept)
