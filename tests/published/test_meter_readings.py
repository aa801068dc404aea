"""Every reading of every layout, as the library's tables, its figure and its devices say it, by Kirchhoff's laws."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import combinations
from math import inf
from typing import Any

import pytest

from latchside.read.yaml_text import read_text
from latchside.root import ROOT
from tests.published.check import ask
from tests.published.circuits import meter, single, string

COLUMNS = {
    "none": ("none", True), "series": ("series", True), "across-closed": ("across", True),
    "across-open": ("across", False), "double": ("double", True), "double-across": ("double-across", True),
}  # fmt: skip
"""Columns of the table, each with its circuit and whether the contact is closed while the leaf is shut."""
FIGURE = {"across": "parallel"}
STATES = {"shut": (True, ""), "open": (False, ""), "short": (True, "short"), "cut": (True, "cut"),
          "lead-off": (True, "lead-off"), "bridged": (False, "bridged")}  # fmt: skip
"""Rows of the table: is the leaf shut, and what is wrong."""

END, SECOND, CABLE = 2200.0, 4700.0, 3.2
PARALLEL = 1 / (1 / END + 1 / SECOND)
MEANS = {
    "near zero": CABLE, "open circuit": inf, "resistor value plus leads": END + CABLE,
    "series value plus leads": END + CABLE, "both added, plus leads": END + SECOND + CABLE,
    "across value plus leads": SECOND + CABLE, "the two in parallel, plus leads": PARALLEL + CABLE,
    "series value and one across, plus leads": END + SECOND + CABLE,
    "series value and two across, plus leads": END + 2 * SECOND + CABLE,
}  # fmt: skip
"""What the words of the tables stand for, in ohm."""
FOUR = ("shut", "open", "short", "cut")


def table(id_: str) -> dict[str, dict[str, str]]:
    data = read_text((ROOT / f"shared/tables/{id_}.yaml").read_text("utf-8"), f"{id_}.yaml").value
    return {row["id"]: row["cells"] for row in data["rows"]}


def device(id_: str) -> Mapping[str, Any]:
    data: Mapping[str, Any] = read_text((ROOT / f"content/devices/{id_}.yaml").read_text("utf-8"), id_).value
    return data["values"]  # type: ignore[no-any-return]


def circuit(layout: str, *, closed: bool, fault: str = "", end: float = END, second: float = SECOND) -> float:
    return meter(single(layout, closed=closed, series=end, across=second, core=CABLE / 2, fault=fault))


@pytest.mark.parametrize("column", COLUMNS)
@pytest.mark.parametrize("state", STATES)
def test_a_reading_of_the_table(column: str, state: str) -> None:
    layout, closed_while_shut = COLUMNS[column]
    shut, fault = STATES[state]
    found = circuit(layout, closed=shut == closed_while_shut, fault=fault)
    assert found == pytest.approx(MEANS[table("meter-readings")[state][column]], rel=1e-5)


@pytest.mark.parametrize("column", COLUMNS)
def test_the_figure_reads_as_the_circuit(column: str) -> None:
    layout, closed_while_shut = COLUMNS[column]
    found = ask(
        "loop-states", supply_v=5, pull_up_ohm=2200, layout=FIGURE.get(layout, layout), end_ohm=END,
        contact_ohm=SECOND, tolerance_percent=5, cable_ohm=CABLE,
        contact_shut="closed" if closed_while_shut else "open",
    )  # fmt: skip
    cells = {state: table("meter-readings")[state][column] for state in FOUR}
    for state in FOUR:
        shut, fault = STATES[state]
        other = circuit(layout, closed=shut == closed_while_shut, fault=fault)
        assert (found["states"][state]["ohm"] or (0 if state == "short" else inf)) == pytest.approx(other, abs=1e-4)
    alike = {frozenset(pair) for group in found["same_reading"] for pair in combinations(group, 2)}
    for one, other_state in combinations(FOUR, 2):
        assert (frozenset((one, other_state)) in alike) == (cells[one] == cells[other_state]), (one, other_state)


@pytest.mark.parametrize("layout", ["series", "across-all", "across-each"])
@pytest.mark.parametrize(
    ("state", "closed", "fault"),
    [
        ("all-shut", (True, True, True), ""), ("one-open", (True, False, True), ""),
        ("two-open", (False, False, True), ""), ("short", (True, True, True), "short"),
        ("cut", (True, True, True), "cut"), ("cut-inside", (True, True, True), "cut-inside"),
        ("lead-off", (True, True, True), "lead-off"), ("bridged", (True, False, True), "bridged"),
    ],
)  # fmt: skip
def test_a_reading_of_several_contacts(layout: str, state: str, closed: tuple[bool, ...], fault: str) -> None:
    found = meter(string(layout, closed, series=END, across=SECOND, core=CABLE / 2, fault=fault))
    assert found == pytest.approx(MEANS[table("several-on-a-loop")[state][layout]], rel=1e-5)


def test_the_example_of_several_contacts() -> None:
    """Of 4.7 kohm each, one open reads 9.4 and two open read 14.1."""
    path = ROOT / "shared/tables/several-on-a-loop.yaml"
    values = read_text(path.read_text("utf-8"), path.name).value["values"]
    each = 1000 * values["each"]["value"]
    for name, closed in (("one-open", (False, True)), ("two-open", (False, False))):
        found = meter(string("across-each", closed, series=each, across=each, core=0.001))
        assert 1000 * values[name]["value"] == pytest.approx(found, abs=1)


def test_the_table_s_wet_example() -> None:
    """A leak of 10,000 ohm across 2,200 reads 1,803, as the table's text says."""
    found = ask("loop-states", layout="series", end_ohm=2200, leakage_ohm=10000)
    assert found["states"]["shut"]["ohm"] == pytest.approx(1803, abs=0.5)


def test_usual_contact_of_each_layout() -> None:
    """Left empty, a contact is closed while shut, but for a resistor across it alone."""
    for layout in ("none", "series", "double", "double-across", "parallel"):
        usual = "open" if layout == "parallel" else "closed"
        assert ask("loop-states", layout=layout) == ask("loop-states", layout=layout, contact_shut=usual)


GOOD = {"series": ("loop-shut", "loop-open"), "double": ("loop-shut", "loop-open-double"),
        "double-across": ("loop-shut-across", "loop-open-across"), "none": ("contact-resistance", "loop-open"),
        "across": ("contact-resistance", "loop-open-across")}  # fmt: skip
"""The values of a device that judge a good loop of each layout."""


@pytest.mark.parametrize("id_", ["recessed-contact", "wide-reach-contact"])
@pytest.mark.parametrize("layout", GOOD)
@pytest.mark.parametrize("part", [0.95, 1.0, 1.05])
@pytest.mark.parametrize("leads", [0.0, 9.9])
def test_a_device_passes_a_good_loop_and_no_other(id_: str, layout: str, part: float, leads: float) -> None:
    """Resistors within their 5 per cent and leads up to those of the label: each reading inside its own value alone."""
    values = device(id_)
    end = part * values["end-of-line"]["value"]
    for name, closed in zip(GOOD[layout], (True, False), strict=True):
        other = GOOD[layout][1] if closed else GOOD[layout][0]
        found = meter(single(layout, closed=closed, series=end, across=end, core=max(leads, 1e-6) / 2))
        assert inside(values[name], found), name
        assert not inside(values[other], found), other


def inside(value: Mapping[str, Any], ohm: float) -> bool:
    if "min" in value:
        return bool(ohm >= value["min"] * 1e6)
    if "max" in value:
        return bool(ohm <= value["max"])
    spread = value["value"] * value["tolerance"]["percent"] / 100
    return bool(abs(ohm - value["value"]) <= spread)
