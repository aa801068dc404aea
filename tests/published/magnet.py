"""Magnet, reed and spacer against the outside."""

from __future__ import annotations

from collections.abc import Callable
from itertools import combinations, product
from math import pi
from typing import Any

from tests.published.check import Check, Pairs, ask
from tests.published.outside import charged_discs_mt, charged_faces_mt, library, solenoid_mt

ROD = {"shape": "cylinder", "remanence_t": 0.4, "diameter_mm": 5, "length_mm": 20}
BLOCK = {"shape": "bar", "remanence_t": 0.4, "width_mm": 5, "height_mm": 5, "length_mm": 20}
DISTANCES = (1, 5, 10, 15, 20, 25, 30, 40, 50, 60)

ON_AXIS = {
    5: (20.122000, 24.377033), 10: (5.280652, 6.615867), 15: (2.212955, 2.795290), 20: (1.154940, 1.463482),
    25: (0.684633, 0.868887), 30: (0.441316, 0.560587), 40: (0.216099, 0.274760), 50: (0.122103, 0.155320),
    60: (0.075801, 0.096447),
}  # fmt: skip
"""Field in mT of the rod and the block by distance from the face, written down from a run of magpylib 6.3.0."""

GAPS = {3: 13.05, 2: 15.70, 1.5: 17.84, 1: 21.28, 0.7: 24.77, 0.5: 28.50}
"""Gap in mm at which the rod's field on its axis has fallen to so many mT, from the same run."""

OVER_STEEL = {20: 19.99, 15: 19.17, 10: 17.45, 5: 13.37, 3: 9.85}
"""Distance in mm between the axes of rod and reed at 1 mT, by their height above steel, from the same run."""


def _magpylib() -> Pairs:
    magnet = library("magpylib").magnet
    bodies = (
        (ROD, magnet.Cylinder(polarization=(0, 0, 0.4), dimension=(5, 20))),
        (BLOCK, magnet.Cuboid(polarization=(0, 0, 0.4), dimension=(5, 5, 20))),
    )
    for (given, body), distance in product(bodies, DISTANCES):
        other = 1000 * body.getB((0, 0, 10 + distance))[2]
        yield ask("magnet-field", **given, distance_mm=distance)["field_mt"], float(other)


def _written_field() -> Pairs:
    for distance, printed in ON_AXIS.items():
        for given, other in zip((ROD, BLOCK), printed, strict=True):
            yield ask("magnet-field", **given, distance_mm=distance)["field_mt"], other


def _coulomb_field() -> Pairs:
    for distance in (2, 10, 25, 60):
        other = charged_discs_mt(0.4, 2.5, 20, 0, 10 + distance)
        yield ask("magnet-field", **ROD, distance_mm=distance)["field_mt"], other
        other = charged_faces_mt(0.4, 5, 5, 20, 0, 10 + distance)
        yield ask("magnet-field", **BLOCK, distance_mm=distance)["field_mt"], other


def _dipole() -> Pairs:
    """Far away any magnet is a dipole: 2e-7 m / r³ of its moment m, r from its middle."""
    moment = 0.4 * pi * 2.5**2 * 20e-9 / (4e-7 * pi)
    for distance in (290, 390, 490):
        other = 2e-4 * moment / ((distance + 10) / 1000) ** 3
        yield ask("magnet-field", **ROD, distance_mm=distance)["field_mt"], other


def _root(field: Callable[[float], float], threshold: float, low: float, high: float) -> float:
    found: Any = library("scipy.optimize").brentq(lambda gap: field(gap) - threshold, low, high, xtol=1e-11)
    return float(found)


def _written_gaps() -> Pairs:
    for threshold, printed in GAPS.items():
        yield ask("reed-gap", **ROD, mount="end-on", operate_mt=threshold, release_mt=0.4)["operate_mm"], printed
    for steel, printed in OVER_STEEL.items():
        found = ask("reed-gap", **ROD, mount="parallel", operate_mt=1, release_mt=0.6, steel_mm=steel)
        yield found["operate_mm"] + 2.5, printed


def _solenoid_gaps() -> Pairs:
    for threshold, offset in product((0.5, 1, 2), (0, 3, 6)):
        given = {**ROD, "operate_mt": threshold, "release_mt": 0.6 * threshold, "offset_mm": offset}
        beside = _root(lambda g, o=offset: -solenoid_mt(0.4, 2.5, 20, 2.5 + g, o), threshold, 1, 60)  # type: ignore[misc]
        ahead = _root(lambda g, o=offset: solenoid_mt(0.4, 2.5, 20, o, 10 + g), threshold, 4, 60)  # type: ignore[misc]
        yield ask("reed-gap", **given, mount="parallel")["operate_mm"], beside
        yield ask("reed-gap", **given, mount="end-on")["operate_mm"], ahead


def _coulomb_gaps() -> Pairs:
    """The bar's field at the gaps found, its image in the steel included, is the threshold again."""
    bar = {"shape": "bar", "remanence_t": 1.2, "width_mm": 6, "height_mm": 4, "length_mm": 15}
    for offset in (0, 4):
        found = ask("reed-gap", **bar, mount="parallel", operate_mt=1.5, release_mt=1, offset_mm=offset)
        for gap, threshold in ((found["operate_mm"], 1.5), (found["release_mm"], 1)):
            yield -charged_faces_mt(1.2, 6, 4, 15, 3 + gap, offset), threshold
        found = ask("reed-gap", **bar, mount="end-on", operate_mt=1.5, release_mt=1, offset_mm=offset)
        yield charged_faces_mt(1.2, 6, 4, 15, offset, 7.5 + found["operate_mm"]), 1.5


def _printed_field() -> Pairs:
    """Printed there for a magnet of radius 0.5, length 10 and 1 mT: scaled to 1 T and millimetres."""
    rod = {"shape": "cylinder", "remanence_t": 1, "diameter_mm": 1, "length_mm": 10, "mount": "parallel"}
    found = ask("reed-gap", **rod, operate_mt=0.44788490737216163, release_mt=0.2)
    yield found["operate_mm"], 10 - 0.5
    found = ask("reed-gap", **rod, label_gap_mm=10 - 0.5)
    yield found["threshold_mt"], 0.44788490737216163


SPACER_CASES = (
    (6.5, 4, 3, (1, 2, 5)), (6.5, 4, -7, (1, 2, 3)), (13, 8, 0, (5, 5)), (13, 8, 2.4, (1, 2, 3)), (4, 4, 0, (1, 2)),
    (10, 3, 0.4, (1.5, 3, 6)), (2, 9.7, 0, (0.5, 2, 2, 4)),
)  # fmt: skip


def _programmed_spacers() -> Pairs:
    """The least that can be left, as a mixed integer programme solved by HiGHS."""
    import numpy as np

    optimize = library("scipy.optimize")
    for sensor, magnet, step, spacers in SPACER_CASES:
        wanted, count = abs(sensor + step - magnet), len(spacers)
        thick = np.asarray(spacers, dtype=float)
        rows = np.vstack([np.append(thick, -1), np.append(thick, 1), np.append(np.ones(count), 0)])
        found = optimize.milp(
            c=np.append(np.zeros(count), 1),
            constraints=optimize.LinearConstraint(rows, [-np.inf, wanted, 0], [wanted, np.inf, 2]),
            integrality=np.append(np.ones(count), 0),
            bounds=optimize.Bounds(np.zeros(count + 1), np.append(np.ones(count), np.inf)),
        )
        answer = ask("spacer", sensor_mm=sensor, magnet_mm=magnet, step_mm=step, spacers_mm=list(spacers))
        yield abs(answer["left_mm"]), float(found.fun)


def _measured_spacers() -> Pairs:
    """The same in inches, with Pint's quantities and every choice tried."""
    units = library("pint").UnitRegistry()
    for sensor, magnet, step, spacers in SPACER_CASES:
        wanted = units.Quantity(sensor + step - magnet, "mm").to("inch")
        pieces = [units.Quantity(one, "mm").to("inch") for one in spacers]
        sums = [sum(some, 0 * units.inch) for count in range(3) for some in combinations(pieces, count)]
        answer = ask("spacer", sensor_mm=sensor, magnet_mm=magnet, step_mm=step, spacers_mm=list(spacers))
        yield answer["offset_mm"], float(wanted.to("mm").magnitude)
        yield abs(answer["left_mm"]), min(abs((abs(wanted) - one).to("mm").magnitude) for one in sums)


MAGPYLIB_RUN = "magpylib 6.3.0, values written down from a run of its own"
CHECKS = (
    Check("magnet-field", "field_mt", "magpylib, cylinder and bar", "library", _magpylib, 1e-11),
    Check("magnet-field", "field_mt", MAGPYLIB_RUN, "library", _written_field, 1e-6, "mT"),
    Check(
        "magnet-field",
        "field_mt",
        "Coulomb's law for charged end faces, integrated by SciPy",
        "law",
        _coulomb_field,
        1e-8,
    ),
    Check("magnet-field", "field_mt", "the field of a dipole, thirty centimetres and more away", "law", _dipole, 0.003),
    Check("reed-gap", "operate_mm", MAGPYLIB_RUN, "library", _written_gaps, 0.006, "mm"),
    Check(
        "reed-gap",
        "operate_mm",
        "Derby and Olbert, American Journal of Physics 78 (2010) 229, with SciPy's root finder",
        "published",
        _solenoid_gaps,
        1e-6,
        "mm",
    ),
    Check(
        "reed-gap", "operate_mm", "Coulomb's law for charged end faces, integrated by SciPy", "law", _coulomb_gaps, 1e-6
    ),
    Check(
        "reed-gap",
        "operate_mm",
        "mrfmsim, a field value printed in the tests of its cylinder magnet",
        "published",
        _printed_field,
        1e-7,
    ),
    Check("spacer", "left_mm", "SciPy, as a mixed integer programme", "library", _programmed_spacers, 1e-6, "mm"),
    Check("spacer", "offset_mm", "Pint, in inches, every choice tried", "library", _measured_spacers, 1e-6, "mm"),
)
