"""Radio loss through the outer wall of a building, after ITU-R P.2109.

Formula, with f in GHz, lg the decimal logarithm and z(P) the standard normal deviate of the share P of places::

    L = 10 lg(10^(A/10) + 10^(B/10) + 10^(C/10)) dB,  C = -3
    A = z(P) (u + v lg f) + r + s lg f + t (lg f)²
    B = z(P) (y + z lg f) + w + x lg f

L is the loss that is not exceeded at P per cent of places, for a path that meets the wall level. It holds from
80 MHz to 100 GHz. Source: ITU-R P.2109-2, section 3; coefficients read in two open implementations that agree.
Error: the recommendation describes many buildings together. One wall may lie anywhere between the losses at 10 and
90 per cent, which at alarm frequencies are some 20 dB apart.
"""

from __future__ import annotations

from math import log10

from latchside.figures.arithmetic import deviate

COEFFICIENTS: dict[str, tuple[float, ...]] = {
    "traditional": (12.64, 3.72, 0.96, 9.6, 2.0, 9.1, -3.0, 4.5, -2.0),
    "efficient": (28.19, -3.0, 8.48, 13.5, 3.8, 27.8, -2.9, 9.4, -2.1),
}
"""r, s, t, u, v, w, x, y, z of P.2109 by class of building."""

_FLOOR_DB = -3.0


def compute(*, frequency_mhz: float, building: str, percent: float) -> dict[str, object]:
    """Loss in dB not exceeded at `percent` of places; frequency 80 to 100000 MHz, percent above 0 and below 100."""
    return {"loss_db": entry_loss(frequency_mhz, building, percent)}


def entry_loss(frequency_mhz: float, building: str, percent: float) -> float:
    """Loss in dB through the outer wall, for a level path (see the module)."""
    r, s, t, u, v, w, x, y, z = COEFFICIENTS[building]
    lg = log10(frequency_mhz / 1000)
    off = deviate(percent / 100)
    main = off * (u + v * lg) + r + s * lg + t * lg**2
    other = off * (y + z * lg) + w + x * lg
    return 10 * log10(sum(10 ** (part / 10) for part in (main, other, _FLOOR_DB)))
