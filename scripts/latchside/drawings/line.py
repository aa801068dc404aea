"""A line of many points with those left out that nobody would miss."""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

Spot = tuple[float, float]
UNSEEN = 0.1
"""So far, in units of the sheet, a line may pass beside a point that it leaves out: a tenth of the thinnest line."""


def simplified(points: Sequence[Spot], within: float = UNSEEN) -> list[Spot]:
    """The points of a line without those that it passes within `within` of, both ends kept (Douglas and Peucker)."""
    kept, left = {0, len(points) - 1}, [(0, len(points) - 1)]
    while left:
        first, last = left.pop()
        beside = [(_beside(points[at], points[first], points[last]), at) for at in range(first + 1, last)]
        far, at = max(beside, default=(0.0, first))
        if far > within:
            kept.add(at)
            left += [(first, at), (at, last)]
    return [points[at] for at in sorted(kept)]


def _beside(spot: Spot, start: Spot, end: Spot) -> float:
    """How far a spot is from the line between two others."""
    (x, y), (x1, y1), (x2, y2) = spot, start, end
    long = hypot(x2 - x1, y2 - y1)
    if long == 0:
        return hypot(x - x1, y - y1)
    share = max(0.0, min(1.0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / long**2))
    return hypot(x - x1 - share * (x2 - x1), y - y1 - share * (y2 - y1))
