"""Small made-up faults for the tests of fault finding, and an exhaustive search that shares nothing with the plan."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from itertools import count
from typing import Any

from hypothesis import strategies as st

from latchside.order.problem import Guesses, Problem, from_fault

GUESSES = Guesses(
    {"often": 6, "sometimes": 3, "rare": 1},
    {"nothing": 0, "ladder": 4, "cover-open": 1, "meter": 2},
    frozenset({"cover-open"}),
)

Record = dict[str, Any]


def cause(id_: str, frequency: str = "often", minutes: float = 10, **more: Any) -> Record:
    who = more.pop("who", "technician")
    return {"id": id_, "frequency": frequency, "remedy": {"minutes": minutes, "who": who}, **more}


def check(
    id_: str, minutes: float, *leaves: str | Mapping[str, Any], needs: tuple[str, ...] = ("nothing",), **more: Any
) -> Record:
    """A check; each of `leaves` is a result: the causes it leaves as words in one string, or the result itself."""
    number = count()
    results = [
        {"id": f"r{next(number)}", "leaves": one.split()} if isinstance(one, str) else {"id": f"r{next(number)}", **one}
        for one in leaves
    ]
    return {"id": id_, "minutes": minutes, "needs": list(needs), "results": results, **more}


def record(causes: list[Record], checks: list[Record] | None = None) -> Record:
    return {"id": "made-up", "causes": causes, "checks": checks or []}


def problem(causes: list[Record], checks: list[Record] | None = None, device: str | None = None) -> Problem:
    return from_fault(record(causes, checks), GUESSES, device)


# -- random ones -------------------------------------------------------------------------------------------------

_LETTERS = "abcdef"


@st.composite
def causes(draw: st.DrawFn, most: int = 4, electrician: bool = True, waiting: bool = True) -> list[Record]:
    """Some causes; where they may be `waiting`, some are mended after others, which are never an electrician's."""
    who = st.sampled_from(["technician"] * 5 + ["electrician"] * electrician)
    letters: list[str] = draw(st.permutations(_LETTERS[: draw(st.integers(1, most))]))
    found: list[Record] = []
    for letter in letters:
        made = cause(
            letter, draw(st.sampled_from(["often", "sometimes", "rare"])), draw(st.integers(1, 12)), who=draw(who)
        )
        before = [one["id"] for one in found if one["remedy"]["who"] != "electrician"]
        if waiting and before and draw(st.sampled_from([False, True])):
            made["after"] = draw(st.lists(st.sampled_from(before), min_size=1, max_size=2, unique=True))
        found.append(made)
    return sorted(found, key=lambda one: str(one["id"]))


@st.composite
def checks(draw: st.DrawFn, of: list[Record], name: str, *, misleading: bool = True) -> Record:
    """A check of two or three results; a cause may be left by none, by one, or, where it can mislead, by several."""
    results: list[Record] = [{"id": f"r{i}"} for i in range(draw(st.integers(2, 3)))]
    for one in of:
        most = 2 if misleading else 1
        fewest = draw(st.sampled_from([1, 1, 1, 1, 0]))
        leaving = draw(
            st.lists(st.sampled_from(results), min_size=fewest, max_size=most, unique_by=lambda r: str(r["id"]))
        )
        said = draw(st.sampled_from([None, 0.9, 0.75])) if len(leaving) == 2 else None
        for chance, result in zip((said, None if said is None else 1 - said), leaving, strict=False):
            result.setdefault("leaves", []).append(one["id"])
            if chance is not None:
                result.setdefault("likelihood", {})[one["id"]] = chance
    for result in results:
        if draw(st.sampled_from([False] * 7 + [True])):
            result["go"] = "another"
    needs = draw(st.lists(st.sampled_from(["ladder", "cover-open"]), unique=True)) or ["nothing"]
    made = {"id": name, "minutes": draw(st.integers(1, 6)), "needs": needs, "results": results}
    return made | ({"restore": "Put it back."} if "cover-open" in needs else {})


@st.composite
def records(draw: st.DrawFn, most_causes: int = 4, most_checks: int = 3, *, misleading: bool = True) -> Record:
    listed = draw(causes(most_causes))
    names = [f"k{i}" for i in range(draw(st.integers(0, most_checks)))]
    return record(listed, [draw(checks(listed, name, misleading=misleading)) for name in names])


# -- the exhaustive search ---------------------------------------------------------------------------------------

Weights = tuple[Fraction, ...]


class Exhaustive:
    """The least expected minutes by trying every action everywhere, in exact fractions, straight from the record."""

    def __init__(self, made: Record) -> None:
        self.causes, self.checks = made["causes"], made["checks"]
        self._known: dict[tuple[Weights, frozenset[str], frozenset[int]], Fraction] = {}

    def least(self) -> Fraction:
        return self._least(
            tuple(Fraction(GUESSES.weight[one["frequency"]]) for one in self.causes), frozenset(), frozenset()
        )

    def _least(self, weights: Weights, up: frozenset[str], done: frozenset[int]) -> Fraction:
        """Minutes times weight, so that nothing need be divided."""
        if (weights, up, done) not in self._known:
            self._known[weights, up, done] = self._tried(weights, up, done)
        return self._known[weights, up, done]

    def _tried(self, weights: Weights, up: frozenset[str], done: frozenset[int]) -> Fraction:
        mendable = [
            i for i, weight in enumerate(weights) if weight and self.causes[i]["remedy"]["who"] != "electrician"
        ]
        if not mendable:
            return Fraction(0)
        left = {one["id"] for one, weight in zip(self.causes, weights, strict=True) if weight}
        found = [
            self._mended(weights, up, done, i) for i in mendable if not left & set(self.causes[i].get("after", ()))
        ]
        found += [
            self._checked(weights, up, done, k)
            for k, one in enumerate(self.checks)
            if k not in done and all(self._leaving(one, i) for i, weight in enumerate(weights) if weight)
        ]
        return min(found)

    def _mended(self, weights: Weights, up: frozenset[str], done: frozenset[int], i: int) -> Fraction:
        rest = tuple(Fraction(0) if j == i else weight for j, weight in enumerate(weights))
        return Fraction(self.causes[i]["remedy"]["minutes"]) * sum(weights) + self._least(rest, up, done)

    def _checked(self, weights: Weights, up: frozenset[str], done: frozenset[int], k: int) -> Fraction:
        one = self.checks[k]
        minutes = one["minutes"] + sum(GUESSES.minutes[need] for need in one["needs"] if need not in up)
        total = minutes * sum(weights)
        for result in one["results"]:
            after = tuple(weight * self._chance(one, result, i) for i, weight in enumerate(weights))
            if any(after):
                ends = "go" in result or "escalate" in result
                total += self._in_order(after) if ends else self._least(after, up | set(one["needs"]), done | {k})
        return Fraction(total)

    def _in_order(self, weights: Weights) -> Fraction:
        return Exhaustive(record(self.causes))._least(weights, frozenset(), frozenset())

    def _leaving(self, one: Record, i: int) -> list[Record]:
        return [result for result in one["results"] if self.causes[i]["id"] in result.get("leaves", ())]

    def _chance(self, one: Record, result: Record, i: int) -> Fraction:
        leaving, name = self._leaving(one, i), self.causes[i]["id"]
        if result not in leaving:
            return Fraction(0)
        said = result.get("likelihood", {}).get(name)
        return Fraction(1, len(leaving)) if said is None else Fraction(said)


def least_minutes(made: Record) -> float:
    total = sum(GUESSES.weight[one["frequency"]] for one in made["causes"])
    return float(Exhaustive(made).least() / total)
