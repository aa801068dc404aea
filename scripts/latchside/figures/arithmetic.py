"""Arithmetic on floats as a browser does it: what has no value is nan or infinite, and nothing raises.

The emitted Python uses these, so that it gives what the emitted JavaScript gives. Arguments and results are plain
floats, angles in radians. Rounding of the transcendental functions may differ from a browser's by one unit in the
last place; everything else is exact (IEEE 754, ECMA-262 on Number).
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from statistics import NormalDist

NAN = math.nan


def div(a: float, b: float) -> float:
    """`a / b`; a zero below gives infinity, or nan for zero over zero."""
    if b:
        return a / b
    return NAN if not a or math.isnan(a) or math.isnan(b) else math.copysign(math.inf, a) * math.copysign(1.0, b)


def mod(a: float, b: float) -> float:
    """The rest of `a / b` with the sign of `b`; nan where `b` is zero or `a` infinite."""
    if not b or math.isinf(a):
        return NAN
    rest = math.fmod(a, b)
    return rest + b if rest and (rest < 0) != (b < 0) else rest


def power(a: float, b: float) -> float:
    """`a ** b`; nan for a broken power of a negative number."""
    if math.isnan(b) or (abs(a) == 1 and math.isinf(b)):
        return NAN
    try:
        return math.pow(a, b)
    except OverflowError:
        return -math.inf if a < 0 and b % 2 == 1 else math.inf
    except ValueError:
        return NAN if a else math.copysign(math.inf, a) if b % 2 == 1 else math.inf


def exp(x: float) -> float:
    """e to the `x`; infinite where too large."""
    try:
        return math.exp(x)
    except OverflowError:
        return math.inf


def floor(x: float) -> float:
    """The whole number at or below `x`."""
    return math.copysign(float(math.floor(x)), x) if math.isfinite(x) else x


def ceil(x: float) -> float:
    """The whole number at or above `x`."""
    return math.copysign(float(math.ceil(x)), x) if math.isfinite(x) else x


def least(*of: float) -> float:
    """The least; nan where one is."""
    return NAN if any(map(math.isnan, of)) else min(of, key=_order)


def greatest(*of: float) -> float:
    """The greatest; nan where one is."""
    return NAN if any(map(math.isnan, of)) else max(of, key=_order)


def total(of: Sequence[float]) -> float:
    """The sum, added from the left; 0 for an empty list."""
    result = 0.0
    for one in of:
        result += one
    return result


def smallest_at_least(of: Sequence[float], x: float) -> float:
    """The smallest entry of a list that is not below `x`; nan where there is none."""
    return min((one for one in of if one >= x), default=NAN)


def deviate(share: float) -> float:
    """The standard normal deviate below which a share between 0 and 1 lies."""
    return NormalDist().inv_cdf(share)


def _order(x: float) -> tuple[float, float]:
    return x, math.copysign(1.0, x)


def _or_nan(function: Callable[[float], float]) -> Callable[[float], float]:
    def guarded(x: float) -> float:
        try:
            return function(x)
        except ValueError:
            return NAN

    return guarded


def _log(function: Callable[[float], float]) -> Callable[[float], float]:
    def guarded(x: float) -> float:
        return function(x) if x > 0 else -math.inf if x == 0 else NAN

    return guarded


FUNCTIONS: dict[str, Callable[..., float]] = {
    "div": div, "mod": mod, "power": power, "exp": exp, "floor": floor, "ceil": ceil, "abs": abs,
    "min": least, "max": greatest, "sum": total, "smallest_at_least": smallest_at_least,
    "sqrt": _or_nan(math.sqrt), "log10": _log(math.log10), "log": _log(math.log), "atan": math.atan,
    "acos": _or_nan(math.acos), "cos": _or_nan(math.cos), "sin": _or_nan(math.sin), "tan": _or_nan(math.tan),
}  # fmt: skip
"""What emitted Python may call, by the name it uses."""
