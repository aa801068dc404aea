"""Cable and loops against the outside."""

from __future__ import annotations

from itertools import product
from math import inf, pi

from tests.published.check import Check, Pairs, ask
from tests.published.circuits import meter, single
from tests.published.outside import FOOT, library

KFT = 1000 * FOOT / 1000
"""One thousand feet in km."""

WIRE_TABLE = {22: 16.14, 18: 6.385, 16: 4.016, 14: 2.525, 12: 1.588, 10: 0.9989}
"""Ohm for a thousand feet of solid copper at 20 degC, by AWG, as public wire tables print it."""

IEC_60228 = {0.5: 36.0, 0.75: 24.5, 1.0: 18.1, 1.5: 12.1, 2.5: 7.41}
"""Highest ohm/km at 20 degC of plain copper of class 1 and 2, by mm2."""

COMMITTEE_READINGS = ((120.0, 0.75), (3000.0, 4.1))
"""Loop in ohm and reading in V, printed to the figures here, on a supply of 5 V."""

E12 = "10 12 15 18 22 27 33 39 47 56 68 82"
E24 = "10 11 12 13 15 16 18 20 22 24 27 30 33 36 39 43 47 51 56 62 68 75 82 91"

FOUR_BANDS = {
    1000: "brown black red", 2200: "red red red", 3300: "orange orange red", 4700: "yellow violet red",
    5600: "green blue red", 6800: "blue grey red", 10000: "brown black orange",
}  # fmt: skip
"""Codes of common end-of-line resistors."""


def _table() -> Pairs:
    for awg, printed in WIRE_TABLE.items():
        yield ask("cable-resistance", length_m=100, awg=awg)["ohm_per_km"] * KFT, printed
    yield ask("cable-resistance", length_m=100, awg=22)["ohm_per_km"], 52.94


def _code_at_75() -> Pairs:
    yield ask("cable-resistance", length_m=100, awg=18, temperature_c=75)["ohm_per_km"] * KFT, 7.77


def _diameters() -> Pairs:
    piping = library("fluids.piping")
    for awg in range(10, 31):
        printed = 1000 * piping.t_from_gauge(awg, SI=True, schedule="AWG")
        yield ask("cable-resistance", length_m=1, awg=awg)["diameter_mm"], printed


def _loop_of_tables() -> Pairs:
    piping = library("fluids.piping")
    for awg, length in product((18, 20, 22, 24), (5, 30, 120)):
        area = pi / 4 * (1000 * piping.t_from_gauge(awg, SI=True, schedule="AWG")) ** 2
        yield ask("cable-resistance", length_m=length, awg=awg)["loop_ohm"], 2 * length / 58 / area


def _committee_divider() -> Pairs:
    for ohm, volts in COMMITTEE_READINGS:
        yield ask("supervised-loop", supply_v=5, pull_up_ohm=680, loop_ohm=ohm)["loop_v"], volts


def _reflected_divider() -> Pairs:
    lines = library("skrf.tlineFunctions")
    for supply, pull_up, loop in product((5, 12, 13.8), (680, 2200, 10000), (10, 2200, 5600, 100000)):
        other = supply / 2 * (1 + lines.zl_2_Gamma0(float(pull_up), float(loop)).real.item())
        yield ask("supervised-loop", supply_v=supply, pull_up_ohm=pull_up, loop_ohm=loop)["loop_v"], other


def _committee_states() -> Pairs:
    for ohm, volts in COMMITTEE_READINGS:
        found = ask("loop-states", supply_v=5, pull_up_ohm=680, layout="series", end_ohm=ohm, tolerance_percent=0)
        yield found["states"]["shut"]["typical_v"], volts


def _reflected_states() -> Pairs:
    """Each typical reading of each layout from the reflection of its circuit, built of line-theory loads."""
    lines = library("skrf.tlineFunctions")
    supply, pull_up, end, contact, cable, leak = 12.0, 2200.0, 2200.0, 4700.0, 12.0, 20000.0
    far = {
        ("none", "shut"): 0.0, ("none", "open"): inf, ("series", "shut"): end, ("series", "open"): inf,
        ("parallel", "shut"): end, ("parallel", "open"): 0.0,
        ("double", "shut"): end, ("double", "open"): end + contact,
        ("double-across", "shut"): 1 / (1 / end + 1 / contact), ("double-across", "open"): contact,
    }  # fmt: skip
    for layout in ("none", "series", "parallel", "double", "double-across"):
        states = ask(
            "loop-states", supply_v=supply, pull_up_ohm=pull_up, layout=layout, end_ohm=end, contact_ohm=contact,
            tolerance_percent=5, cable_ohm=cable, leakage_ohm=leak,
        )["states"]  # fmt: skip
        for state in states:
            ohm = far.get((layout, state), 0.0 if state == "short" else inf)
            admittance = 1 / leak + (0.0 if ohm == inf else 1 / (ohm + cable))
            other = supply / 2 * (1 + lines.zl_2_Gamma0(pull_up, 1 / admittance).real.item())
            yield states[state]["typical_v"], other


def _nodal_windows() -> Pairs:
    """The ends of the windows of two resistors, from the node equation of each corner, solved by SymPy."""
    sympy = library("sympy")
    v = sympy.symbols("v")
    share, supply = sympy.Rational(5, 100), 5
    states = ask(
        "loop-states", supply_v=supply, pull_up_ohm=4700, layout="double", end_ohm=2200, contact_ohm=1000,
        tolerance_percent=5, cable_ohm=40, leakage_ohm=10000,
    )["states"]  # fmt: skip
    ends = (1 - share, 1 + share)
    for state, far in (("shut", (2200, 0)), ("open", (2200, 1000))):
        found = [
            sympy.solve((supply - v) / (4700 * pull) - v / (far[0] * end + far[1] * over + 40 * run) - v * wet, v)[0]
            for pull, end, over, run, wet in product(ends, ends, ends, ends, (0, sympy.Rational(1, 10000)))
        ]
        yield states[state]["low_v"], float(min(found))
        yield states[state]["high_v"], float(max(found))


def _nodal_circuits() -> Pairs:
    """Each layout as it is wired, three resistors apart, by the conductance matrix of its nodes."""
    supply, pull_up, cable = 12.0, 3300.0, 15.0
    for end, contact in ((1000.0, 1000.0), (4700.0, 12000.0), (2200.0, 4700.0)):
        for layout, wired in (("series", "series"), ("double", "double"), ("double-across", "double-across")):
            states = ask(
                "loop-states", supply_v=supply, pull_up_ohm=pull_up, layout=layout, end_ohm=end, contact_ohm=contact,
                tolerance_percent=1, cable_ohm=cable,
            )["states"]  # fmt: skip
            for state, closed, fault in (("shut", True, ""), ("open", False, ""), ("short", True, "short")):
                ohm = meter(single(wired, closed=closed, series=end, across=contact, core=cable / 2, fault=fault))
                volts = supply if ohm == inf else supply * ohm / (ohm + pull_up)
                yield states[state]["typical_v"], volts


def _course_example() -> Pairs:
    """A printed example: 100 ft of No. 16, 4.99 ohm for a thousand feet, 4 A, 24 V: 4.0 V, 16.7 per cent."""
    area = 1000 / 58 / (4.99 / KFT)
    found = ask("voltage-drop", supply_v=24, current_a=4, length_m=100 * FOOT, area_mm2=area)
    yield found["drop_v"], 4.0
    yield found["drop_percent"], 16.7


def _table_drop() -> Pairs:
    for (awg, ohm), current, feet in product(WIRE_TABLE.items(), (0.02, 0.5), (50, 400)):
        found = ask("voltage-drop", supply_v=13.8, current_a=current, length_m=feet * FOOT, awg=awg)
        yield found["drop_v"], 2 * feet * ohm / 1000 * current


def _nearest() -> Pairs:
    for name, members in (("E12", E12), ("E24", E24)):
        for first, tens in product(members.split(), range(0, 5)):
            value = float(f"{first}e{tens}")
            yield ask("resistor", ohm=value * 1.02, series=name)["nearest_ohm"], value


def _neighbours() -> Pairs:
    """Between two members the nearest by ratio is the one on whose side of their geometric mean the value lies."""
    eseries = library("eseries")
    for name, ohm in product(("E12", "E24"), (1.3, 17.2, 115.0, 2449.0, 2570.0, 3142.0, 9600.0, 88888.0)):
        key = eseries.ESeries[name]
        low, high = eseries.find_less_than_or_equal(key, ohm), eseries.find_greater_than_or_equal(key, ohm)
        yield ask("resistor", ohm=ohm, series=name)["nearest_ohm"], low if ohm * ohm < low * high else high


def _bands() -> Pairs:
    for ohm, code in FOUR_BANDS.items():
        yield float(ask("resistor", ohm=ohm, series="E24")["bands"] == [*code.split(), "gold"]), 1.0


SKRF = "scikit-rf, the reflection of a load on a line of the pull-up's value"
COMMITTEE = "paper of the SIA standards committee on ANSI/SIA CP-01, 2009: two printed pairs of loop and reading"
PRINTED_WIRE = "public copper wire tables at twenty degrees, after NBS Handbook 100"
FLUIDS = "fluids, its table of American wire gauge"

CHECKS = (
    Check("cable-resistance", "ohm_per_km", PRINTED_WIRE, "published", _table, 0.0015),
    Check(
        "cable-resistance", "ohm_per_km", "NFPA 70 chapter 9 table 8, solid, uncoated", "published", _code_at_75, 0.002
    ),
    Check("cable-resistance", "diameter_mm", f"{FLUIDS}, to a tenth of a mil", "library", _diameters, 0.00128, "mm"),
    Check("cable-resistance", "loop_ohm", f"{FLUIDS}, at 58 MS/m of IEC 60028", "library", _loop_of_tables, 0.006),
    Check("supervised-loop", "loop_v", COMMITTEE, "published", _committee_divider, 0.05, "V"),
    Check("supervised-loop", "loop_v", SKRF, "library", _reflected_divider, 1e-12),
    Check("loop-states", "states", COMMITTEE, "published", _committee_states, 0.05, "V"),
    Check("loop-states", "states", SKRF, "library", _reflected_states, 1e-12, "V"),
    Check("loop-states", "states", "Kirchhoff's law at each corner, solved by SymPy", "law", _nodal_windows, 1e-12),
    Check(
        "loop-states", "states", "Kirchhoff's laws, the node matrix solved by NumPy", "law", _nodal_circuits, 1e-7, "V"
    ),
    Check("voltage-drop", "drop_v", "worked example of an electricians' course", "published", _course_example, 0.006),
    Check("voltage-drop", "drop_v", PRINTED_WIRE, "published", _table_drop, 0.0015),
    Check("resistor", "nearest_ohm", "IEC 60063, the printed series", "published", _nearest, 1e-12),
    Check("resistor", "nearest_ohm", "eseries, the members either side", "library", _neighbours, 1e-12),
    Check("resistor", "bands", "IEC 60062, codes of seven common values", "published", _bands, 1e-12),
)
