"""Other people's means of working out the same things: laws coded from their publication, and quiet imports."""

from __future__ import annotations

import warnings
from importlib import import_module
from math import cos, pi, sqrt
from typing import Any

FOOT = 0.3048
"""In m, exact by definition."""


def library(name: str) -> Any:
    """A library that warns while it is imported, imported without its warnings."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return import_module(name)


def cel(kc: float, p: float, c: float, s: float) -> float:
    """Bulirsch's general complete elliptic integral (Numerische Mathematik 7, 1965, and 13, 1969)."""
    k, em, pp, cc, ss = abs(kc), 1.0, p, c, s
    if pp > 0:
        pp = sqrt(pp)
        ss /= pp
    else:
        f, q = kc * kc, 1.0
        q, g, f = q - f, 1.0 - pp, f - pp
        q *= ss - c * pp
        pp = sqrt(f / g)
        cc = (c - ss) / g
        ss = -q / (g * g * pp) + cc * pp
    f = cc
    cc += ss / pp
    g = k / pp
    ss = 2 * (ss + f * g)
    pp, g, em, kk = g + pp, em, k + em, k
    while abs(g - k) > g * 1e-13:
        k = 2 * sqrt(kk)
        kk = k * em
        f = cc
        cc += ss / pp
        g = kk / pp
        ss = 2 * (ss + f * g)
        pp += g
        g = em
        em += k
    return (pi / 2) * (ss + cc * em) / (em * (em + pp))


def solenoid_mt(remanence_t: float, radius: float, length: float, side: float, ahead: float) -> float:
    """Axial field in mT of a cylinder magnet, as an ideal solenoid.

    Derby and Olbert, Cylindrical magnets and ideal solenoids, American Journal of Physics 78 (2010) 229.
    """
    gamma = (radius - side) / (radius + side)
    total = 0.0
    for sign, z in ((1, ahead + length / 2), (-1, ahead - length / 2)):
        beta = z / sqrt(z * z + (side + radius) ** 2)
        k = sqrt((z * z + (radius - side) ** 2) / (z * z + (radius + side) ** 2))
        total += sign * beta * cel(k, gamma * gamma, 1, gamma)
    return 1000 * remanence_t / pi * radius / (radius + side) * total


def charged_faces_mt(
    remanence_t: float, width: float, height: float, length: float, side: float, ahead: float
) -> float:
    """Axial field in mT of a bar magnet by Coulomb's law: its end faces as sheets of magnetic charge, integrated."""
    from scipy.integrate import dblquad

    def sheet(sign: float, z: float) -> float:
        away = ahead - z
        part, _ = dblquad(
            lambda y, x: away / ((side - x) ** 2 + y**2 + away**2) ** 1.5,
            -width / 2, width / 2, -height / 2, height / 2, epsabs=1e-13, epsrel=1e-11,
        )  # fmt: skip
        return float(sign * part)

    return 1000 * remanence_t / (4 * pi) * (sheet(1, length / 2) + sheet(-1, -length / 2))


def charged_discs_mt(remanence_t: float, radius: float, length: float, side: float, ahead: float) -> float:
    """Axial field in mT of a cylinder magnet by Coulomb's law: its ends as discs of magnetic charge, integrated."""
    from scipy.integrate import dblquad

    def disc(sign: float, z: float) -> float:
        away = ahead - z
        part, _ = dblquad(
            lambda angle, r: r * away / (side**2 + r**2 - 2 * side * r * cos(angle) + away**2) ** 1.5,
            0, radius, 0, 2 * pi, epsabs=1e-13, epsrel=1e-11,
        )  # fmt: skip
        return float(sign * part)

    return 1000 * remanence_t / (4 * pi) * (disc(1, length / 2) + disc(-1, -length / 2))
