"""Each figure agrees with at least two things from outside the project, and what was measured is written down."""

from __future__ import annotations

import json

import pytest

from tests.published.check import Check, figures
from tests.published.every import CHECKS, NOISE, REPORT, measured, report

ISSUED = {
    "cable-resistance", "supervised-loop", "loop-states", "voltage-drop", "cell-life", "cell-current",
    "missed-check-in", "field-limit", "duty", "free-space-loss", "indoor-loss", "entry-loss", "slab-loss",
    "radio-margin", "magnet-field", "reed-gap", "spacer", "standby-battery", "ladder", "resistor",
}  # fmt: skip


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: f"{check.figure}: {check.source}")
def test_agrees_with_the_outside(check: Check) -> None:
    difference, points = measured(check)
    assert points
    assert difference <= check.allowed, f"{check.output} differs by {difference:.3g} {check.unit}"


def test_every_figure_is_there() -> None:
    assert set(figures()) >= ISSUED


@pytest.mark.parametrize("figure", sorted(figures()))
def test_two_outside_sources(figure: str) -> None:
    assert len({check.source for check in CHECKS if check.figure == figure}) >= 2


def test_outputs_exist() -> None:
    for check in CHECKS:
        assert check.output in {entry["name"] for entry in figures()[check.figure].data["outputs"]}, check.figure


def test_report_is_current() -> None:
    """The written report says what is measured now, but for rounding."""
    written, now = json.loads(REPORT.read_text("utf-8")), report()
    again = "Run: python -m tests.published.measure"
    for entries in (*written.values(), *now.values()):
        for entry in entries:
            entry["difference"] = pytest.approx(entry["difference"], rel=0.1, abs=NOISE)
    assert written == now, again
