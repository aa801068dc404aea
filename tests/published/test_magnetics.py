"""The field of cylinder and bar, outside and in, against a general library, handbook formulas and laws of nature."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise, product
from math import atan, cos, hypot, inf, isfinite, pi, sin, sqrt
from random import Random
from typing import Any

import pytest

from latchside.figures.magnetics import bar_mt, cel, cylinder_mt

from .outside import library

REMANENCE_T = 0.4
FULL_MT = 1000 * REMANENCE_T
RODS = ((5.0, 20.0), (8.0, 3.0), (20.0, 5.0))
"""Diameter and length in mm: long, short, and a disc."""
BARS = ((5.0, 5.0, 20.0), (10.0, 3.0, 4.0), (1.5, 12.0, 25.0))
"""Width, height and length in mm."""
Field = Callable[[float, float, float], float]


def rod(size: tuple[float, float]) -> Field:
    return lambda x, y, z: cylinder_mt(REMANENCE_T, *size, hypot(x, y), z)


def bar(size: tuple[float, float, float]) -> Field:
    return lambda x, y, z: bar_mt(REMANENCE_T, *size, x, y, z)


MAGNETS = [pytest.param(rod(size), size, id=f"rod {size}") for size in RODS] + [
    pytest.param(bar(size), size, id=f"bar {size}") for size in BARS
]
every_magnet = pytest.mark.parametrize(("field", "size"), MAGNETS)


def others(size: tuple[float, ...]) -> Any:
    magnet = library("magpylib").magnet
    of = magnet.Cylinder if len(size) == 2 else magnet.Cuboid
    return of(polarization=(0, 0, REMANENCE_T), dimension=size)


def places(size: tuple[float, ...]) -> list[tuple[float, float, float]]:
    """Points on the axis, on the planes of symmetry, and drawn inside, near and far; none on the surface itself."""
    chance = Random(7)
    steps = (0.0, 0.31, 1.07, 2.9, 6.3, 11.7, 40.1)
    grid = [(x, y, z) for x, y in product(steps, (0.0, 0.83, 9.1)) for z in (*steps, -3.3)]
    inside = [tuple(chance.uniform(-0.35, 0.35) * side for side in (size[0], size[-2], size[-1])) for _ in range(100)]
    spread = [tuple(chance.uniform(-wide, wide) for _ in range(3)) for wide in (15, 60) for _ in range(300)]
    return [(x, y, z) for x, y, z in (*grid, *inside, *spread)]


@every_magnet
def test_field_is_that_of_magpylib(field: Field, size: tuple[float, ...]) -> None:
    """To 1e-14 of the remanence, inside and out to 100 mm: six digits and more of any field that works a reed."""
    points = places(size)
    theirs = 1000 * others(size).getB(points)[:, 2]
    worst = max(abs(field(*point) - float(other)) for point, other in zip(points, theirs, strict=True))
    assert worst < 1e-14 * FULL_MT


@every_magnet
def test_far_field_is_that_of_magpylib(field: Field, size: tuple[float, ...]) -> None:
    """Ahead and beside, as far as gaps are looked at: the field itself to one part in a hundred thousand."""
    points = [(x, 0.0, z) for x, z in ((0, 500), (0, 2000), (500, 0), (2000, 0), (300, 900), (900, 300))]
    theirs = 1000 * others(size).getB(points)[:, 2]
    assert [field(*point) for point in points] == pytest.approx(theirs.tolist(), rel=1e-5, abs=0)


@pytest.mark.parametrize("size", RODS)
def test_a_rod_on_its_axis_by_the_handbook(size: tuple[float, float]) -> None:
    """Br/2 × [(L+z)/√((L+z)²+R²) − z/√(z²+R²)], z from the face: magnetics-handbook."""
    radius, length = size[0] / 2, size[1]
    for z in (0.0, 0.2, 3.0, 17.0, 90.0):
        far = z + length
        wanted = FULL_MT / 2 * (far / sqrt(far * far + radius * radius) - z / sqrt(z * z + radius * radius))
        assert rod(size)(0, 0, length / 2 + z) == pytest.approx(wanted, rel=1e-9)


@pytest.mark.parametrize("size", BARS)
def test_a_bar_on_its_axis_by_the_handbook(size: tuple[float, float, float]) -> None:
    """Br/π × [f(z) − f(z + L)] with f(x) = atan(a b / (2x √(4x² + a² + b²))), z from the face: magnetics-handbook."""
    a, b, length = size

    def part(x: float) -> float:
        return atan(a * b / (2 * x * sqrt(4 * x * x + a * a + b * b)))

    for z in (0.2, 3.0, 17.0, 90.0):
        wanted = FULL_MT / pi * (part(z) - part(z + length))
        assert bar(size)(0, 0, length / 2 + z) == pytest.approx(wanted, rel=1e-9)


@every_magnet
def test_far_away_it_is_a_dipole(field: Field, size: tuple[float, ...]) -> None:
    """Br V / 4π × (3 cos² − 1) / r³. What is left falls as the square of size over distance."""
    volume = size[0] * size[1] * size[2] if len(size) == 3 else pi * size[0] ** 2 / 4 * size[1]
    far = 60 * max(size)
    for angle, turn in product((0.0, 0.4, 1.3, pi / 2, 2.8), (0.0, 0.7)):
        x, y, z = far * sin(angle) * cos(turn), far * sin(angle) * sin(turn), far * cos(angle)
        wanted = FULL_MT * volume / (4 * pi) * (3 * cos(angle) ** 2 - 1) / far**3
        assert field(x, y, z) == pytest.approx(wanted, rel=1e-3)


@every_magnet
def test_each_part_of_a_free_field_is_even(field: Field, size: tuple[float, ...]) -> None:
    """Free of sources and of whirls, outside and inside: the Laplacian of every component is nothing."""
    step = 0.02
    ends = size[-1] / 2
    inside = [(0.1 * size[0], 0.2 * size[-2], 0.3 * size[-1]), (0.0, 0.0, 0.0)]
    for x, y, z in [
        *inside,
        (size[0], 0.3, 0.0),
        (0.4, 0.7, ends + 2),
        (size[0], size[-2], ends),
        (0.0, 0.0, ends + 1),
    ]:
        middle = field(x, y, z)
        seconds = [
            field(x + dx, y + dy, z + dz) + field(x - dx, y - dy, z - dz) - 2 * middle
            for dx, dy, dz in ((step, 0, 0), (0, step, 0), (0, 0, step))
        ]
        assert abs(sum(seconds)) < 1e-3 * max(map(abs, seconds)) + 1e-10


@every_magnet
def test_current_through_a_loop_is_that_of_the_magnet(field: Field, size: tuple[float, ...]) -> None:
    """Ampère's law along an endless line beside the axis: Br L through the magnet, nothing outside it."""
    quad = library("scipy.integrate").quad
    half = size[-1] / 2
    for x, wanted in ((0.0, 1.0), (0.31 * size[0], 1.0), (0.72 * size[0], 0.0), (3 * size[0], 0.0)):
        parts = [quad(lambda z, x=x: field(x, 0, z), *ends, epsabs=1e-8)[0] for ends in ((0, half), (half, 9 * half))]
        tail = quad(lambda z, x=x: field(x, 0, z), 9 * half, inf, epsabs=1e-8)[0]
        assert 2 * (sum(parts) + tail) / (FULL_MT * size[-1]) == pytest.approx(wanted, abs=1e-6)


@pytest.mark.parametrize("size", RODS)
@pytest.mark.parametrize("share", [0.0, 0.4, 0.6, 2.0])
def test_what_goes_up_through_a_plane_comes_down_again(size: tuple[float, float], share: float) -> None:
    """Gauss's law: no flux goes through an endless plane across the axis, in the magnet or ahead of it."""
    quad = library("scipy.integrate").quad
    radius, z = size[0] / 2, share * size[1]

    def ring(r: float) -> float:
        return 2 * pi * r * cylinder_mt(REMANENCE_T, *size, r, z)

    edges = (0, radius, 4 * radius, 40 * radius)
    within = sum(quad(ring, *ends, limit=200)[0] for ends in pairwise(edges))
    beyond = quad(ring, edges[-1], inf, limit=200)[0]
    assert (within + beyond) / (FULL_MT * pi * radius**2) == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("kc", [1e-6, 0.03, 0.5, 1.0, 1.7])
@pytest.mark.parametrize(("p", "c", "s"), [(1, 1, 1), (1e-4, 1, 0.01), (0.3, 1, -0.5), (1, 1, 0), (2, -1, 3)])
def test_cel_is_its_integral(kc: float, p: float, c: float, s: float) -> None:
    def inner(turn: float) -> float:
        up, across = cos(turn) ** 2, sin(turn) ** 2
        return (c * up + s * across) / ((up + p * across) * sqrt(up + kc * kc * across))

    quad = library("scipy.integrate").quad
    edges = (0, pi / 4, pi / 2 - 0.01, pi / 2 - 1e-4, pi / 2)
    wanted = sum(quad(inner, *ends, limit=400)[0] for ends in pairwise(edges))
    assert cel(kc, p, c, s) == pytest.approx(wanted, rel=1e-8)


@every_magnet
def test_on_the_surface(field: Field, size: tuple[float, ...]) -> None:
    """On the side it is the field just outside; through an end face it is steady."""
    side, end = size[0] / 2, size[-1] / 2
    for z in (0.0, 0.5 * end):
        assert field(side, 0, z) == pytest.approx(field(side + 1e-9, 0, z), abs=1e-5)
        assert field(side - 1e-9, 0, z) - field(side, 0, z) == pytest.approx(FULL_MT, abs=1e-4)
    for x in (0.0, 0.3 * side):
        below, at, above = (field(x, 0, z) for z in (end - 1e-9, end, end + 1e-9))
        assert at == pytest.approx(below, abs=1e-5)
        assert at == pytest.approx(above, abs=1e-5)


@every_magnet
def test_at_edges_and_corners_there_is_a_value_between(field: Field, size: tuple[float, ...]) -> None:
    side, end = size[0] / 2, size[-1] / 2
    corners = (
        [(side, 0.0, end)] if len(size) == 2 else [(side, 0.0, end), (0.0, size[1] / 2, end), (side, size[1] / 2, end)]
    )
    for x, y, z in corners:
        near = [field(x + dx, y + dy, z + dz) for dx, dy, dz in product((-1e-7, 0.0, 1e-7), repeat=3) if dx or dy or dz]
        assert isfinite(field(x, y, z))
        assert min(near) <= field(x, y, z) <= max(near)


@every_magnet
def test_the_field_is_even_about_the_middle(field: Field, size: tuple[float, ...]) -> None:
    for x, y, z in ((1.0, 2.0, 3.0), (7.0, 0.5, 12.0)):
        assert len({field(x * a, y * b, z * c) for a, b, c in product((1, -1), repeat=3)}) == 1
