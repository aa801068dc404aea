"""The way of the radio from an opening to the control unit: what stands in it, in a bad case and in a good one.

Where the survey leaves something open, the bad case takes the worst that is likely and the good case the best. More
distance, walls or floors make neither better.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from latchside.figures.for_device.radio import MOUNTING_DB
from latchside.figures.rounding import joined
from latchside.jobs.figures_for.context import Context
from latchside.jobs.figures_for.shown import say
from latchside.jobs.survey import Wall

METAL_FRAME_DB = 6.0
"""What a metal frame behind the body takes, beyond the usual mounting; typical."""
SHUT_OFF_DB = 100.0
"""A whole sheet of metal lets nothing through: the most that an obstacle counts."""
THICKER = 2.0
"""A wall that nobody measured counts, in the bad case, for as much as one of this many times the house's thickness."""
FAR_M, INDOORS_M = 5000.0, 1000.0
"""Ends of the figures for a way and for one indoors: a longer way counts as this long, and is hopeless by then."""
FOILED = ("foil", "metal")
_THICKNESS_MM = {
    "brick": 200.0, "concrete": 200.0, "plasterboard": 26.0, "wood": 50.0, "glass": 12.0, "chipboard": 25.0,
    "plywood": 25.0,
}  # fmt: skip
_DRAWN_OUT = ("brick", "concrete", "plasterboard", "chipboard", "plywood")


@dataclass
class Way:
    """Inputs of the margin for both cases, what was assumed, and whether an assumption could turn the verdict."""

    bad: dict[str, Any]
    good: dict[str, Any]
    assumed: list[str] = field(default_factory=list)
    unsure: bool = False


def way(context: Context, frequency: float) -> Way | None:
    """The way at a frequency in MHz; None where the distance is not known or a wall cannot be worked."""
    opening = context.opening
    if opening.distance_m is None:
        return None
    common = {"distance_m": min(max(opening.distance_m, 1.0), FAR_M), "frequency_mhz": frequency}
    found = Way({**common, "obstacles": []}, {**common, "obstacles": []})
    if not _walls(context, found, frequency):
        return None
    _floors(context, found)
    _outer(context, found)
    _mounting(context, found)
    return found


def _walls(context: Context, found: Way, frequency: float) -> bool:
    walls = context.opening.walls
    if walls is None:
        extra = _average(context, found.bad["distance_m"], frequency)
        if extra is None:
            return False
        found.bad["obstacles"].append(extra)
        found.assumed.append("The walls on the way are not known: in a bad spot as in an average home, else none.")
        found.unsure = True
        return True
    for wall in walls:
        losses = _wall(context, wall, frequency)
        if losses is None:
            return False
        found.bad["obstacles"].append(losses[0])
        found.good["obstacles"].append(losses[1])
    found.assumed += _told(context, walls)
    found.unsure |= any(wall.material in (*FOILED, "plywood") for wall in walls)
    return True


def _average(context: Context, distance: float, frequency: float) -> float | None:
    """What an average home takes beyond free space; nothing where that is less than nothing."""
    at = {"distance_m": min(distance, INDOORS_M), "frequency_mhz": frequency}
    home, free = context.answer("indoor-loss", at), context.answer("free-space-loss", at)
    return None if home is None or free is None else max(0.0, float(home["loss_db"]) - float(free["loss_db"]))


def _wall(context: Context, wall: Wall, frequency: float) -> tuple[float, float] | None:
    """Loss in a bad and in a good spot."""
    if wall.material in FOILED:
        return _foil(context, wall.material, frequency)
    house = context.rule(f"wall-{wall.material}", _THICKNESS_MM.get(wall.material, 200.0))
    measured = wall.thickness_mm is not None
    good = _slab(context, wall.material, wall.thickness_mm if wall.thickness_mm is not None else house, frequency)
    bad = good if measured else _slab(context, wall.material, THICKER * house, frequency)
    return None if good is None or bad is None else (min(SHUT_OFF_DB, max(bad, good)), min(SHUT_OFF_DB, good))


def _slab(context: Context, material: str, thickness: float, frequency: float) -> float | None:
    inputs = {
        "material": material, "thickness_mm": min(max(thickness, 0.1), 1000.0), "frequency_mhz": frequency,
    }  # fmt: skip
    answer = context.answer("slab-loss", inputs)
    return None if answer is None else max(0.0, float(answer["loss_db"]))


def _foil(context: Context, material: str, frequency: float) -> tuple[float, float] | None:
    """As walls with foil and coated glass do in nine tenths and in a tenth of places; through metal itself, nothing."""
    at = {"frequency_mhz": frequency, "building": "efficient"}
    most, least = (context.answer("entry-loss", {**at, "percent": share}) for share in (90.0, 10.0))
    if most is None or least is None:
        return None
    return SHUT_OFF_DB if material == "metal" else float(most["loss_db"]), float(least["loss_db"])


def _told(context: Context, walls: tuple[Wall, ...]) -> Iterator[str]:
    unmeasured = sorted({wall.material for wall in walls if wall.thickness_mm is None and wall.material not in FOILED})
    for material in unmeasured:
        thick = context.rule(f"wall-{material}", _THICKNESS_MM.get(material, 200.0))
        yield f"{material.capitalize()} that nobody measured counts as {say(thick, 'mm')}, in a bad spot twice that."
    drawn_out = sorted({wall.material for wall in walls} & set(_DRAWN_OUT))
    if drawn_out:
        yield f"{joined(drawn_out).capitalize()}: drawn out beyond the table of the standard, dry and whole."
    for material in sorted({wall.material for wall in walls} & set(FOILED)):
        through = "Nothing gets through metal" if material == "metal" else "Foil counts as walls with foil do"
        yield f"{through}; in a good spot as much gets round it as in a tenth of foiled buildings."


def _floors(context: Context, found: Way) -> None:
    floors = context.opening.floors
    found.good["floors"] = 0 if floors is None else min(floors, 10)
    found.bad["floors"] = 1 if floors is None else min(floors, 10)
    if floors is None:
        found.assumed.append("The floors on the way are not known: one in a bad spot, none in a good one.")
        found.unsure = True


def _outer(context: Context, found: Way) -> None:
    outer = context.opening.outer_wall
    known = outer not in (None, "unknown")
    found.bad["crosses_outer_wall"] = outer if known else "efficient"
    found.good["crosses_outer_wall"] = outer if known else "no"
    if not known:
        found.assumed.append(
            "Whether the way crosses the outer wall is not known: one with foil in a bad spot, none in a good one."
        )


def _mounting(context: Context, found: Way) -> None:
    opening = context.opening
    metal: bool | None = False
    if not context.device.transmitter:  # which is set apart from metal
        if opening.frame_material in ("steel", "aluminium") or opening.steel in ("frame", "both"):
            metal = True
        elif opening.frame_material in (None, "unknown") or opening.steel in (None, "unknown"):
            metal = None
    found.bad["mounting_loss_db"] = MOUNTING_DB + (METAL_FRAME_DB if metal is not False else 0.0)
    found.good["mounting_loss_db"] = MOUNTING_DB + (METAL_FRAME_DB if metal else 0.0)
    found.assumed.append(f"{say(MOUNTING_DB, 'dB')} are taken off for a small aerial and its mounting.")
    if metal:
        found.assumed.append(f"{say(METAL_FRAME_DB, 'dB')} more for metal behind the body.")
    elif metal is None:
        found.assumed.append(
            f"Whether metal lies behind the body is not known: {say(METAL_FRAME_DB, 'dB')} in a bad spot."
        )
