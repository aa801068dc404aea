"""All checks of all figures, and what they measured."""

from __future__ import annotations

from functools import cache
from typing import Any

from latchside.root import ROOT
from tests.published import magnet, power, radio, site, wiring
from tests.published.check import Check

CHECKS: tuple[Check, ...] = (*wiring.CHECKS, *power.CHECKS, *radio.CHECKS, *magnet.CHECKS, *site.CHECKS)

REPORT = ROOT / "shared" / "differences.json"
"""What `report` gave when it was last written down; the documentation shows it."""

NOISE = 1e-7
"""Differences below this are rounding, which is not the same on every machine; they are written as nought."""


@cache
def measured(check: Check) -> tuple[float, int]:
    """The largest difference of a check and the number of points, measured once a run."""
    return check.measured()


def report() -> dict[str, list[dict[str, Any]]]:
    """For each figure its checks, each with the largest difference from its source, to two digits."""
    found: dict[str, list[dict[str, Any]]] = {}
    for check in CHECKS:
        difference, points = measured(check)
        found.setdefault(check.figure, []).append(
            {
                "output": check.output,
                "source": check.source,
                "kind": check.kind,
                "points": points,
                "difference": float(f"{difference:.1e}") if difference >= NOISE else 0.0,
                "allowed": check.allowed,
                "unit": check.unit,
            }
        )
    return dict(sorted(found.items()))
