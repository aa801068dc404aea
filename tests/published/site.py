"""Ladders against the outside."""

from __future__ import annotations

from math import cos, radians, sin, sqrt

from tests.published.check import Check, Pairs, ask
from tests.published.outside import FOOT


def _quarter() -> Pairs:
    for length in (2, 4, 6.5):
        yield ask("ladder", working_length_m=length)["setback_m"], length / 4
    found = ask("ladder", working_length_m=4)
    yield found["height_m"], 3.873


def _load_test_angle() -> Pairs:
    for length in (2, 4, 6.5):
        yield ask("ladder", working_length_m=length)["angle_deg"], 75.5


def _one_in_four() -> Pairs:
    for height in (2.4, 3.6, 5):
        yield ask("ladder", support_height_m=height, landing=False)["angle_deg"], 75


def _landing() -> Pairs:
    for height in (2.4, 3.6, 5):
        up = ask("ladder", support_height_m=height, landing=True)["ladder_length_m"]
        yield up - ask("ladder", support_height_m=height, landing=False)["ladder_length_m"], 3 * FOOT


def _pythagoras() -> Pairs:
    for height in (2.4, 3.6, 5):
        found = ask("ladder", support_height_m=height, landing=False)
        length = sqrt(found["setback_m"] ** 2 + height**2)
        yield length * cos(radians(found["angle_deg"])), found["setback_m"]
        yield length * sin(radians(found["angle_deg"])), height


CHECKS = (
    Check(
        "ladder",
        "setback_m",
        "29 CFR 1926.1053(b)(5)(i), a quarter of the working length",
        "published",
        _quarter,
        0.0002,
    ),
    Check(
        "ladder",
        "angle_deg",
        "29 CFR 1926.1053(a)(1)(ii), the angle of the load test",
        "published",
        _load_test_angle,
        0.05,
        "deg",
    ),
    Check(
        "ladder",
        "angle_deg",
        "HSE and Ladder Association guidance, seventy-five degrees",
        "published",
        _one_in_four,
        1,
        "deg",
    ),
    Check(
        "ladder",
        "ladder_length_m",
        "29 CFR 1926.1053(b)(1), three feet above a landing",
        "published",
        _landing,
        0.06,
        "m",
    ),
    Check("ladder", "angle_deg", "Pythagoras", "law", _pythagoras, 1e-12),
)
