"""The nearest resistor of a preferred series, and its colour bands.

Nearest is by ratio: the value whose quotient with the wanted one is nearest to one, because the series are geometric.
The four bands are two digits, the power of ten and the tolerance of the series (E12 silver, E24 gold).
Range: 0.1 ohm to 10 Mohm. Sources: IEC 60063 for the series, IEC 60062 for the colours. No error: both are tables.
"""

from __future__ import annotations

from math import floor, log10

DIGITS = ("black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white")
TENS: dict[int, str] = {-2: "silver", -1: "gold", **dict(enumerate(DIGITS))}
"""Colour of the third band by power of ten."""
SERIES = {
    "E12": (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82),
    "E24": (
        10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91,
    ),
}  # fmt: skip
"""Two digits of each member of a decade."""
TOLERANCE = {"E12": "silver", "E24": "gold"}
"""Colour of the fourth band: ten per cent, five per cent."""


def compute(*, ohm: float, series: str) -> dict[str, object]:
    """Nearest value of the series in ohm, and its four bands from the end with the digits."""
    digits, tens = nearest(ohm, series)
    bands = [DIGITS[digits // 10], DIGITS[digits % 10], TENS[tens], TOLERANCE[series]]
    return {"nearest_ohm": _value(digits, tens), "bands": bands}


def nearest(ohm: float, series: str) -> tuple[int, int]:
    """Two digits and a power of ten, such as 47 and 2 for 4700 ohm, of the value nearest to `ohm` by ratio."""
    decade = floor(log10(ohm)) - 1
    choices = [(member, tens) for tens in (decade - 1, decade, decade + 1) for member in SERIES[series]]
    return min(
        (choice for choice in choices if choice[1] in TENS), key=lambda choice: abs(log10(_value(*choice) / ohm))
    )


def _value(digits: int, tens: int) -> float:
    return float(f"{digits}e{tens}")  # exact, where a product with a power of ten is not
