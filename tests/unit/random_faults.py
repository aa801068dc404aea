"""A thousand made-up faults from one seed, with what the plan does first and what it costs: for Python and browser."""

from __future__ import annotations

import random
from dataclasses import replace
from typing import Any

from latchside.order.exact import Exact
from latchside.order.problem import Cause, Check, Problem, Result, SetUp
from latchside.order.states import Moves
from latchside.pages.fault_data import problem_data

SEED = 20_011
WHO = ("technician", "technician", "technician", "lead", "joiner", "electrician")


def random_problem(chance: random.Random) -> Problem:
    """One to eight causes, none to six checks of two or three results, some misleading, up to three set-ups.

    Some causes wait for earlier ones, and some cannot be mended here.
    """
    causes = tuple(
        Cause(
            f"c{i}",
            float(chance.choice((6, 3, 1))),
            float(chance.randint(1, 60)),
            chance.choice(WHO),
            chance.getrandbits(i) & chance.getrandbits(i) if i and chance.random() < 0.4 else 0,
            chance.random() < 0.93,
        )
        for i in range(chance.randint(1, 8))
    )
    set_ups = tuple(SetUp(f"s{i}", float(chance.randint(1, 6)), i == 0) for i in range(chance.randint(0, 3)))
    checks = tuple(_check(chance, f"k{i}", len(causes), len(set_ups)) for i in range(chance.randint(0, 6)))
    return Problem(causes, checks, set_ups)


def _check(chance: random.Random, id_: str, causes: int, set_ups: int) -> Check:
    count = chance.randint(2, 3)
    chances = [[0.0] * causes for _ in range(count)]
    for i in range(causes):
        first, second = chance.sample(range(count), 2)
        likely = chance.choice((1.0, 1.0, 1.0, 1.0, 0.9, 0.75, 0.5, 0.0))
        chances[first][i] = likely
        if 0 < likely < 1:
            chances[second][i] = 1 - likely
    results = tuple(
        Result(
            f"r{number}",
            sum(1 << i for i, share in enumerate(row) if share > 0),
            tuple(row),
            "another" if chance.random() < 0.08 else None,
            chance.random() < 0.05,
        )
        for number, row in enumerate(chances)
    )
    needs = chance.getrandbits(set_ups) if set_ups and chance.random() < 0.6 else 0
    return Check(id_, float(chance.randint(1, 12)), needs, results, bool(needs & 1), bool(needs & 1))


def random_cases(count: int) -> list[dict[str, Any]]:
    """Problems with the first action and the expected minutes, at the start and after each first step."""
    chance = random.Random(SEED)
    return [_case(random_problem(chance)) for _ in range(count)]


def _case(problem: Problem) -> dict[str, Any]:
    if problem.checks and len(problem.checks) % 3 == 0:  # some as they are once a check cannot be done
        problem = replace(problem, checks=problem.checks[1:])
    moves = Moves(problem)
    exact, start = Exact(moves), moves.start()
    action = exact.choose(start)
    children = []
    if 0 <= action < moves.checks:
        children = [child for _, _, child, ends in moves.branches(start, action) if not ends]
    elif action >= moves.checks:
        children = [moves.ruled_out(start, action - moves.checks)]
    after = [[exact.choose(child), exact.value(child)] for child in children if child[0]]
    return {"problem": problem_data(problem), "action": action, "minutes": exact.value(start), "after": after}
