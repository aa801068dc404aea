"""Published limits within which a figure must lie."""

from __future__ import annotations

import pytest

from tests.published.check import ask
from tests.published.outside import FOOT
from tests.published.wiring import IEC_60228


@pytest.mark.parametrize(("area", "most"), IEC_60228.items())
def test_ideal_copper_is_below_the_maximum_of_its_size(area: float, most: float) -> None:
    """IEC 60228, tables 1 and 2: the maximum lies a little above ideal copper of the nominal area."""
    found = ask("cable-resistance", length_m=100, area_mm2=area)["ohm_per_km"]
    assert 0.9 * most < found < most


@pytest.mark.parametrize(("conductor", "printed"), [("copper", 7.95), ("tinned", 8.45)])
def test_stranded_cable_of_the_code_is_a_little_above(conductor: str, printed: float) -> None:
    """NFPA 70 chapter 9 table 8: No. 18 stranded at 75 degC, ohm for a thousand feet."""
    found = ask("cable-resistance", length_m=100, awg=18, temperature_c=75, conductor=conductor)["ohm_per_km"]
    assert 0.94 * printed < found * FOOT < printed


def test_step_between_gauges() -> None:
    """ASTM B258: each gauge is 92^(1/39) = 1.1229322 times thinner than the one before."""
    for awg in range(10, 30):
        wide, thin = (ask("cable-resistance", length_m=1, awg=n)["diameter_mm"] for n in (awg, awg + 1))
        assert wide / thin == pytest.approx(1.1229322, abs=1e-7)


def test_a_limit_is_never_below_its_table() -> None:
    """47 CFR 15.231(b): 3,750 uV/m up to 260 MHz and 12,500 from 470 MHz."""
    for frequency, printed in ((200, 3750), (260, 3750), (470, 12500), (900, 12500)):
        assert ask("field-limit", frequency_mhz=frequency, use="control")["uv_per_m"] == pytest.approx(printed)
