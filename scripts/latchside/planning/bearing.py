"""How an opening stands in its plan: one word for all that was worked out for it."""

from __future__ import annotations

from typing import Literal

from latchside.planning.plan import OpeningPlan, Plan, Verdict

Bearing = Literal["no-device-yet", "problem", "test-on-site", "good", "no-verdict"]
_WORST: tuple[tuple[Verdict, Bearing], ...] = (("test on site", "test-on-site"), ("good", "good"))


def bearing(plan: Plan, one: OpeningPlan) -> Bearing:
    """The worst of an opening: no device, a problem to settle before the day, or the worst of its figures."""
    if one.choice.device is None:
        return "no-device-yet"
    if any(found.concerns(one.opening.id) for found in plan.problems):
        return "problem"
    verdicts = {line.verdict for line in one.figures}
    if "poor" in verdicts:
        return "problem"
    return next((word for verdict, word in _WORST if verdict in verdicts), "no-verdict")
