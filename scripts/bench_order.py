"""What fault finding takes of one core: all shipped plans together, and the largest problems that are solved exactly.

Run it by itself with `.venv/bin/python scripts/bench_order.py`; `lines` gives what it prints.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from time import process_time

from latchside.order import Problem, from_fault, make_plan
from latchside.order.problem import Cause, Check, Result, SetUp, guesses
from latchside.project import check_project
from latchside.root import ROOT

CAUSES = CHECKS = 12


def lines() -> Iterator[str]:
    """What was measured, a line each."""
    yield shipped()
    for name, (remedies, checks, set_ups) in KINDS.items():
        yield twelve(name, remedies, checks, set_ups)


KINDS = {
    "no set-ups": ((5, 60), (1, 10), 0),
    "six set-ups": ((5, 60), (1, 10), 6),
    "six set-ups, cheap remedies": ((1, 10), (1, 10), 6),
    "six set-ups, all the same minutes": ((5, 5), (3, 3), 6),
}
"""Kinds of problems of 12 causes and 12 checks: the ranges of minutes of remedies and checks, and the set-ups."""


def shipped() -> str:
    """Every fault of the library, for every device that lists it and for none."""
    library = check_project(ROOT).library
    known = guesses(library.schemas)
    listing = [
        (fault, device)
        for fault in library.of("fault")
        for device in [None, *(one.id for one in library.of("device") if fault.id in one.listed("faults"))]
    ]
    start = process_time()
    plans = [make_plan(from_fault(fault.data, known, device)) for fault, device in listing]
    took = process_time() - start
    exact = sum(plan.exact for plan in plans)
    return f"{len(plans)} shipped plans, {exact} of them exact: {took:.2f} s together"


def twelve(name: str, remedies: tuple[int, int], checks: tuple[int, int], set_ups: int, rounds: int = 20) -> str:
    """The slowest of some problems of 12 causes and 12 checks of two results, with its compared orders and tree."""
    took = []
    for seed in range(rounds):
        problem = made(random.Random(seed), remedies, checks, set_ups)
        start = process_time()
        assert make_plan(problem).exact
        took.append(process_time() - start)
    return f"12 causes × 12 checks, {name}: {max(took):.2f} s at most, {sum(took) / rounds:.2f} s on average"


def made(chance: random.Random, remedies: tuple[int, int], checks: tuple[int, int], set_ups: int) -> Problem:
    """A problem of 12 causes and 12 checks; each check parts the causes in two at random."""
    causes = (Cause(f"c{i}", chance.choice([6, 3, 1]), chance.randint(*remedies)) for i in range(CAUSES))
    made_checks = []
    for k in range(CHECKS):
        one = chance.randrange(1, (1 << CAUSES) - 1)
        parts = (one, (1 << CAUSES) - 1 & ~one)
        results = (
            Result(f"r{j}", part, tuple(float(part >> i & 1) for i in range(CAUSES))) for j, part in enumerate(parts)
        )
        needs = sum(1 << i for i in range(set_ups) if chance.random() < 0.3)
        made_checks.append(Check(f"k{k}", chance.randint(*checks), needs, tuple(results), chance.random() < 0.3))
    return Problem(
        tuple(causes), tuple(made_checks), tuple(SetUp(f"s{i}", chance.randint(1, 5)) for i in range(set_ups))
    )


if __name__ == "__main__":
    print("\n".join(lines()))
