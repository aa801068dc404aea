"""The readings of a loop by state agree with the library's own table of what a meter shows."""

from __future__ import annotations

from itertools import combinations

import pytest

from latchside.project import ROOT
from latchside.read.yaml_text import read_text
from tests.published.check import ask

COLUMNS = {
    "none": ("none", "closed"), "series": ("series", "closed"), "across-closed": ("parallel", "closed"),
    "across-open": ("parallel", "open"), "double": ("double", "closed"),
}  # fmt: skip
"""Columns of the table, each with the layout and how the contact stands while the leaf is shut."""

END, CONTACT, CABLE = 2200, 4700, 3.2
MEANS = {
    "near zero": CABLE, "open": None, "resistor value plus leads": END + CABLE,
    "series resistor value plus leads": END + CABLE, "both resistor values added, plus leads": END + CONTACT + CABLE,
}  # fmt: skip
"""What the table's words stand for, in ohm."""


def _table() -> dict[str, dict[str, str]]:
    data = read_text((ROOT / "shared/tables/meter-readings.yaml").read_text("utf-8"), "meter-readings.yaml").value
    return {row["id"]: row["cells"] for row in data["rows"]}


@pytest.mark.parametrize("column", COLUMNS)
def test_states_read_as_the_table_says(column: str) -> None:
    layout, shut = COLUMNS[column]
    found = ask(
        "loop-states", supply_v=5, pull_up_ohm=2200, layout=layout, end_ohm=END, contact_ohm=CONTACT,
        tolerance_percent=5, cable_ohm=CABLE, contact_shut=shut,
    )  # fmt: skip
    table = _table()
    for state in ("shut", "open", "short", "cut"):
        assert found["states"][state]["ohm"] == MEANS[table[state][column]], state
    alike = {frozenset(pair) for group in found["same_reading"] for pair in combinations(group, 2)}
    for one, other in combinations(("shut", "open", "short", "cut"), 2):
        assert (frozenset((one, other)) in alike) == (table[one][column] == table[other][column]), (one, other)


def test_the_table_s_wet_example() -> None:
    """A leak of 10,000 ohm across 2,200 reads 1,803, as the table's text says."""
    found = ask("loop-states", layout="series", end_ohm=2200, leakage_ohm=10000)
    assert found["states"]["shut"]["ohm"] == pytest.approx(1803, abs=0.5)


def test_usual_contact_of_each_layout() -> None:
    """Left empty, a contact is closed while shut, but for a resistor across it alone."""
    for layout in ("none", "series", "double", "parallel"):
        usual = "open" if layout == "parallel" else "closed"
        assert ask("loop-states", layout=layout) == ask("loop-states", layout=layout, contact_shut=usual)
