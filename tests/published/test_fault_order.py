"""Expected cost of fault finding against published forms.

The cost of checking causes in turn is the sum of each check's cost times the probability that it is reached, the last
one too, and the order by probability over cost is best (Kadane and Simon; Heckerman, Breese and Rommelse, Decision-
Theoretic Troubleshooting, 1995). A textbook machine problem writes the case of two causes, with separate costs of
repair, as p(C1 + R1) + (1 - p)(C1 + C2 + R2); the repairs do not change the order. A published account of the
single-fault case with tests between actions has no closed form; there an exhaustive search stands in (unit tests).
"""

from __future__ import annotations

import json
import random
from itertools import permutations
from pathlib import Path

import pytest
from click.testing import CliRunner

from latchside.cli import main
from latchside.order import Problem, from_list, make_plan
from latchside.order.compare import in_order
from latchside.order.problem import Cause

P, C, R = (0.3, 0.7), (10, 20), (50, 40)
"""The worked check: the probability, the cost of checking and the cost of repair of two causes."""


def two_causes(first: int, second: int) -> float:
    """The published form for two causes."""
    p = P[first]
    return p * (C[first] + R[first]) + (1 - p) * (C[first] + C[second] + R[second])


def listed() -> list[dict[str, object]]:
    return [{"cause": f"cause-{i + 1}", "probability": P[i], "minutes": C[i]} for i in range(2)]


def test_published_two_cause_form() -> None:
    assert two_causes(0, 1) == pytest.approx(67.0)
    assert two_causes(1, 0) == pytest.approx(66.0)


@pytest.mark.parametrize(("order", "published"), [((0, 1), 67.0), ((1, 0), 66.0)])
def test_order_costs_what_is_published(order: tuple[int, ...], published: float) -> None:
    repairs = sum(p * r for p, r in zip(P, R, strict=True))
    causes = from_list(listed()).causes
    assert in_order(causes[i] for i in order) + repairs == pytest.approx(published)


def test_plan_takes_the_cheaper_order() -> None:
    plan = make_plan(from_list(listed()))
    repairs = sum(p * r for p, r in zip(P, R, strict=True))
    assert plan.order == ("cause-2", "cause-1")
    assert plan.expected + repairs == pytest.approx(66.0)
    assert plan.compared.worst_order is not None
    assert plan.compared.worst_order + repairs == pytest.approx(67.0)


def test_command_prints_it(tmp_path: Path) -> None:
    path = tmp_path / "two.json"
    path.write_text(json.dumps(listed()), "utf-8")
    data = json.loads(CliRunner().invoke(main, ["fault-order", str(path), "--json"]).output)
    assert data["order"] == ["cause-2", "cause-1"]
    assert data["expected_minutes"] == pytest.approx(66.0 - 43.0)


def test_by_probability_over_cost_is_never_beaten_on_2000_problems() -> None:
    chance = random.Random(1995)
    for _ in range(2000):
        count = chance.randint(2, 6)
        weights = [chance.random() for _ in range(count)]
        causes = tuple(
            Cause(f"c{i}", weight / sum(weights), chance.uniform(1, 100)) for i, weight in enumerate(weights)
        )
        plan = make_plan(Problem(causes, plain=True))
        probable = [cause.weight for cause in causes]
        published = min(
            sum(causes[j].minutes * (1 - sum(probable[k] for k in order[:at])) for at, j in enumerate(order))
            for order in permutations(range(count))
        )
        assert plan.expected == pytest.approx(published)
