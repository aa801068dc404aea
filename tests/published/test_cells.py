"""Designations of cells, read by the code of IEC 60086: chemistry, shape, diameter in mm, height in tenths of a mm.

The letters and their nominal voltages stand in open tables that cite the standard; E, lithium thionyl chloride, is from
memory. The code has the diameter in whole millimetres, so 14 stands for 14.5.
"""

from __future__ import annotations

import re
from typing import Any

import pytest

from latchside.read.yaml_text import read_text
from latchside.root import ROOT

CHEMISTRY = {
    "C": ("lithium manganese dioxide", 3.0), "E": ("lithium thionyl chloride", 3.6),
    "F": ("lithium iron disulphide", 1.5), "L": ("alkaline", 1.5),
}  # fmt: skip
CODE = re.compile(r"[CEFL]R(\d\d)(\d{2,3})")
FILE = ROOT / "shared/tables/cells.yaml"
TABLE: dict[str, Any] = read_text(FILE.read_text("utf-8"), FILE.name).value
ROWS = [row["cells"] for row in TABLE["rows"]]


@pytest.mark.parametrize("cells", ROWS, ids=lambda cells: cells["size"])
def test_a_designation_tells_chemistry_voltage_and_size(cells: dict[str, Any]) -> None:
    assert (cells["chemistry"], cells["voltage"]) == CHEMISTRY[cells["size"][0]]
    sized = CODE.fullmatch(cells["size"])
    if sized:
        assert int(cells["diameter"]) == int(sized[1])
        assert cells["height"] == int(sized[2]) / 10


def test_cells_of_one_size_and_two_voltages_are_told_apart() -> None:
    """A half-AA of 3.6 V rests above any fresh cell of 3 V, so a meter at rest tells the two apart."""
    fresh, thionyl = TABLE["values"]["fresh"], TABLE["values"]["fresh-thionyl"]
    assert fresh["max"] < thionyl["min"]
    assert {cells["size"] for cells in ROWS} >= {"ER14250", "CR17345", "CR2032"}
