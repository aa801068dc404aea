"""The European bands of the field limit are the rows of the library's table of bands."""

from __future__ import annotations

from math import log10
from typing import Any

import pytest

from latchside.figures.inputs import InputError
from latchside.read.yaml_text import read_text
from latchside.root import ROOT
from tests.published.check import ask

FILE = ROOT / "shared/tables/radio-bands.yaml"
TABLE: dict[str, Any] = read_text(FILE.read_text("utf-8"), FILE.name).value
EUROPE = [row["cells"] for row in TABLE["rows"] if row["cells"]["region"] == "Europe"]


@pytest.mark.parametrize("cells", EUROPE, ids=lambda cells: cells["band"])
def test_power_of_a_band(cells: dict[str, Any]) -> None:
    name = cells["power"].removeprefix("[[=").partition("]]")[0]
    milliwatt = TABLE["values"][name]["value"]
    low, high = map(float, cells["band"].split(" to "))
    for frequency in (low + 0.01, (low + high) / 2, high - 0.01):
        found = ask("field-limit", region="europe", frequency_mhz=frequency)
        assert found["eirp_dbm"] == pytest.approx(10 * log10(milliwatt) + TABLE["values"]["to-isotropic"]["value"])


@pytest.mark.parametrize("frequency", [315, 433, 434.8, 867.9, 868.75, 869.15, 869.45, 869.6, 869.75, 915])
def test_no_band(frequency: float) -> None:
    with pytest.raises(InputError):
        ask("field-limit", region="europe", frequency_mhz=frequency)


def test_on_air_is_the_duty_of_an_hour() -> None:
    for cells in EUROPE:
        assert cells["on-air"] == pytest.approx(36 * cells["duty"])
