"""The field of a cylinder or bar that is magnetised evenly along its length, in closed form and plain floats.

Both functions give the part of the flux density along the magnet's axis, in mT, at one point outside or inside. A point
is given from the middle of the magnet; remanence is in T, and lengths are in mm or in any other unit that all share.
Sizes must be above zero. Nothing is raised: every finite point has a finite answer.

- A point on the side of the magnet is taken as just outside. On an end face outside and inside agree.
- At the rim of a cylinder, and at the end edges and corners of a bar, the field depends on where it is approached
  from. The value returned there lies between.

Error: rounding alone, at most 1e-14 of the remanence, so it counts only where the field is hardly stronger than that.
Sources: Derby and Olbert, Cylindrical magnets and ideal solenoids, American Journal of Physics 78 (2010) 229. Bulirsch,
Numerische Mathematik 13 (1969) 305. Yang and others, Superconductor Science and Technology 3 (1990) 591, and
Engel-Herbert and Hesjedal, Journal of Applied Physics 97 (2005) 074504, both for the bar.
"""

from __future__ import annotations

from math import atan2, pi, sqrt

_ALIKE = 1e-8
"""Where two means are this close, the next round would square the difference: less than a float can tell apart."""


def cylinder_mt(remanence_t: float, diameter: float, length: float, side: float, ahead: float) -> float:
    """Field in mT along the axis, at a point `side` away from the axis and `ahead` of the middle.

    The magnet is an ideal solenoid: each end gives one elliptic integral.
    """
    radius, side, ahead = diameter / 2, abs(side), abs(ahead)
    behind, before = _end(radius, side, ahead + length / 2), _end(radius, side, ahead - length / 2)
    field = 1000 * remanence_t / pi * radius / (radius + side) * (behind - before)
    on_side = side == radius and ahead < length / 2  # there a solenoid has the mean of outside and inside
    return field - 500 * remanence_t if on_side else field


def _end(radius: float, side: float, ahead: float) -> float:
    """What the solenoid gives from one end on, `ahead` of that end; no unit."""
    far = sqrt(ahead * ahead + (radius + side) * (radius + side))
    near = sqrt(ahead * ahead + (radius - side) * (radius - side))
    if not near:
        return 0.0  # the rim: the limit along the side, and the mean of both sides of the end face
    share = (radius - side) / (radius + side)
    whole = cel(near / far, share * share, 1.0, share) if share else cel(near / far, 1.0, 1.0, 1.0)
    return ahead / far * whole


def cel(kc: float, p: float, c: float, s: float) -> float:
    """Bulirsch's general complete elliptic integral, for kc and p above zero; no units.

    The integral of (c cos² + s sin²) / ((cos² + p sin²) √(cos² + kc² sin²)) over a quarter turn.
    """
    root = sqrt(p)
    s /= root
    k, product, mean, wider = kc, kc, 1.0, 1.0 + kc
    c, s, root = c + s / root, 2 * (s + c * product / root), root + product / root
    while abs(mean - k) > mean * _ALIKE:
        k = 2 * sqrt(product)
        product = k * wider
        c, s, root = c + s / root, 2 * (s + c * product / root), root + product / root
        mean, wider = wider, wider + k
    return pi / 2 * (s + c * wider) / (wider * (wider + root))


def bar_mt(
    remanence_t: float, width: float, height: float, length: float, across: float, up: float, ahead: float
) -> float:
    """Field in mT along the axis, at a point `across` the width, `up` the height and `ahead` of the middle.

    Each end face is a sheet of magnetic charge, and gives the solid angle under which it is seen.
    """
    across, up, ahead = abs(across), abs(up), abs(ahead)
    facing = _solid_angle(width, height, across, up, ahead - length / 2)
    other = _solid_angle(width, height, across, up, ahead + length / 2)
    return 1000 * remanence_t / (4 * pi) * (facing - other)


def _solid_angle(width: float, height: float, across: float, up: float, ahead: float) -> float:
    """The solid angle of an end face from `ahead` of it; behind it and within its outline, in the magnet, what is left
    of a full turn, so that the field is steady through the face."""
    total = 0.0
    for x, x_sign in ((across + width / 2, 1.0), (across - width / 2, -1.0)):
        for y, y_sign in ((up + height / 2, 1.0), (up - height / 2, -1.0)):
            away = ahead * sqrt(x * x + y * y + ahead * ahead)
            total += x_sign * y_sign * atan2(x * y, away)
    return total
