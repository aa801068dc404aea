"""Radio loss of one flat sheet of building material met squarely, after ITU-R P.2040.

Formula, with f in GHz, d the thickness and lambda the wavelength in air::

    e = a f^b - j 17.98 c f^d / f          relative permittivity
    r = (1 - sqrt(e)) / (1 + sqrt(e))      reflection at one face
    q = 2 pi d sqrt(e) / lambda
    T = (1 - r²) exp(-jq) / (1 - r² exp(-2jq))
    L = -20 lg |T| dB

Source: ITU-R P.2040-4, equations (43) and (44); material coefficients of P.2040-3 and P.2040-4, which differ from
those of earlier editions. Range: thickness 0.1 to 1000 mm, frequency 100 to 10000 MHz. In the alarm bands only wood
and glass lie inside the frequency range of the material table; for the others the result says `extrapolated`.
Error: one uniform dry sheet in free air. Water, foil, mesh, studs, ducts and echoes are not in the model, and the
loss does not rise steadily with thickness or frequency, because the two faces echo.
"""

from __future__ import annotations

from math import cos, exp, hypot, log, log10, pi, sin, sqrt
from typing import NamedTuple

from latchside.messages import messages

message = messages(__name__)

SPEED_OF_LIGHT = 299_792_458.0
"""In m/s."""
VACUUM_PERMITTIVITY = 8.8541878128e-12
"""In F/m."""
_DB_PER_NEPER = 20 / log(10)


class Material(NamedTuple):
    """Coefficients a, b (permittivity), c, d (conductivity in S/m) and the frequency range of the table in GHz."""

    a: float
    b: float
    c: float
    d: float
    lowest_ghz: float
    highest_ghz: float


MATERIALS: dict[str, Material] = {
    "concrete": Material(5.24, 0.0, 0.0462, 0.7822, 1.0, 100.0),
    "brick": Material(3.91, 0.0, 0.0238, 0.16, 1.0, 40.0),
    "plasterboard": Material(2.73, 0.0, 0.0085, 0.9395, 1.0, 100.0),
    "wood": Material(1.99, 0.0, 0.0047, 1.0718, 0.001, 100.0),
    "glass": Material(6.31, 0.0, 0.0036, 1.3394, 0.1, 100.0),
    "ceiling-board": Material(1.48, 0.0, 0.0011, 1.0750, 1.0, 100.0),
    "chipboard": Material(2.58, 0.0, 0.0217, 0.78, 1.0, 100.0),
    "plywood": Material(2.71, 0.0, 0.33, 0.0, 1.0, 40.0),
    "metal": Material(1.0, 0.0, 1e7, 0.0, 1.0, 100.0),
}


class Refraction(NamedTuple):
    """The complex index n - jk of a material: how much slower than in air, n, and how damped, k, the wave is in it."""

    slowed: float
    damped: float


def compute(*, material: str, thickness_mm: float, frequency_mhz: float) -> dict[str, object]:
    """Loss in dB of one sheet, and whether the frequency lies outside the material's range in the table."""
    entry = MATERIALS[material]
    outside = not entry.lowest_ghz <= frequency_mhz / 1000 <= entry.highest_ghz
    answer: dict[str, object] = {
        "loss_db": slab_loss(refraction(entry, frequency_mhz), thickness_mm, frequency_mhz),
        "extrapolated": outside,
    }
    warnings: list[str] = []
    if outside:
        warnings.append(message("extrapolated"))
    if material == "plywood":
        warnings.append(message("plywood"))
    if material == "metal":
        warnings.append(message("metal"))
    if warnings:
        answer["warnings"] = warnings
    return answer


def refraction(material: Material, frequency_mhz: float) -> Refraction:
    """The refraction of a material: the square root of its permittivity e = e' - j sigma / (2 pi f e0)."""
    ghz = frequency_mhz / 1000
    real = material.a * ghz**material.b
    lost = material.c * ghz**material.d / (2 * pi * ghz * 1e9 * VACUUM_PERMITTIVITY)
    slowed = sqrt((hypot(real, lost) + real) / 2)
    return Refraction(slowed, lost / (2 * slowed))


def slab_loss(sheet: Refraction, thickness_mm: float, frequency_mhz: float) -> float:
    """Loss in dB of one sheet, met squarely.

    The logarithms are taken factor by factor, so that a sheet of metal does not underflow to no transmission at all.
    """
    n, k = sheet.slowed, sheet.damped
    below = (1 + n) ** 2 + k**2
    faces = 4 * hypot(n, k) / below  # the size of 1 - r², without cancellation where r is near one
    real, turned = (n**2 + k**2 - 1) / below, -2 * k / below  # of -r
    square, twice = real**2 - turned**2, 2 * real * turned  # of r²
    crossed = 2 * pi * thickness_mm / 1000 * frequency_mhz * 1e6 / SPEED_OF_LIGHT
    kept, angle = exp(-2 * crossed * k), 2 * crossed * n  # exp(-2jq)
    echo = hypot(
        1 - kept * (square * cos(angle) + twice * sin(angle)), kept * (twice * cos(angle) - square * sin(angle))
    )
    return _DB_PER_NEPER * crossed * k - 20 * log10(faces) + 20 * log10(echo)
