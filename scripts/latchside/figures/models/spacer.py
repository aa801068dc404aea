"""The spacers that bring the magnet level with the reed.

Formula: offset = sensor height + step - magnet height, all in mm. Both heights are those of the middle line (the axis)
of the reed and of the magnet above the surface each stands on. The step is how far the sensor's surface stands proud
of the magnet's surface, and is negative where it lies deeper. A positive offset means that the magnet lies too low
and is raised; a negative one means that the sensor lies too low.

From the spacers at hand, each used once, none, one or two are chosen that leave the least. `use_mm` has the sign of
the offset, and `left_mm` = offset - `use_mm`. Range: heights 0 to 100 mm, step -50 to 50 mm. Source: geometry; no
error but that of the rule that measured the heights.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations

_MOST = 2


def compute(*, sensor_mm: float, magnet_mm: float, step_mm: float, spacers_mm: Sequence[float]) -> dict[str, object]:
    """Offset in mm before, the spacers to use and under which half, and the offset left."""
    offset = sensor_mm + step_mm - magnet_mm
    pieces = choose(abs(offset), spacers_mm)
    used = sum(pieces) if offset > 0 else -sum(pieces)
    return {
        "offset_mm": _clean(offset),
        "use_mm": _clean(used),
        "left_mm": _clean(offset - used),
        "pieces_mm": list(pieces),
        "under": "neither" if not pieces else "magnet" if offset > 0 else "sensor",
    }


def choose(wanted_mm: float, spacers_mm: Sequence[float]) -> tuple[float, ...]:
    """None, one or two of the spacers whose sum is nearest to what is wanted.

    Of equally near ones the fewest are taken, and then the thinnest, so that nothing is raised without need.
    """
    choices = [pieces for count in range(_MOST + 1) for pieces in combinations(sorted(spacers_mm), count)]
    return min(choices, key=lambda pieces: (_clean(abs(wanted_mm - sum(pieces))), len(pieces), sum(pieces)))


def _clean(length_mm: float) -> float:
    """A length without the last binary digits of a sum: nobody measures nanometres."""
    return round(length_mm, 6) + 0.0
