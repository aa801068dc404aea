"""The way of the radio from an opening to the control unit: what stands in it, in a bad case and in a good one.

Where the survey leaves something open, the bad case takes the worst that is likely and the good case the best. More
distance, walls or floors make neither better.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from latchside.figures.for_device.radio import MOUNTING_DB
from latchside.messages import messages
from latchside.planning.figures_for.context import Context
from latchside.planning.figures_for.shown import say
from latchside.planning.figures_for.walls import FOILED, wall_losses, walls_assumed

message = messages(__name__)
METAL_FRAME_DB = 6.0
"""What a metal frame behind the body takes, beyond the usual mounting; typical."""
FAR_M, INDOORS_M = 5000.0, 1000.0
"""Ends of the figures for a way and for one indoors: a longer way counts as this long, and is hopeless by then."""
ALL_KINDS = ("home", "flats", "office", "shop")
KINDS: dict[str, tuple[str, ...]] = {
    "home": ("home",), "flats": ("home", "flats"), "office": ("office",), "shop": ("shop",),
    "workshop": ("office", "shop"),
}  # fmt: skip
"""Kinds of building in the table of floors, by the survey's word; any of them for a word that is not here. Flats may
have floors of wood, as a house that was divided has, or of concrete."""
_SLOPES = {"home": 28.0, "flats": 28.0, "office": 33.0, "shop": 20.0}
_STEEPEST = 33.0
"""How fast an average building takes the radio, by kind; the most where the kind is not known."""


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
        found.assumed.append(message("walls"))
        found.unsure = True
        return True
    for wall in walls:
        losses = wall_losses(context, wall, frequency)
        if losses is None:
            return False
        found.bad["obstacles"].append(losses[0])
        found.good["obstacles"].append(losses[1])
    found.assumed += walls_assumed(context, walls)
    found.unsure |= any(wall.material in (*FOILED, "plywood") for wall in walls)
    return True


def _average(context: Context, distance: float, frequency: float) -> float | None:
    """What an average building of its kind takes beyond free space; nothing where that is below zero."""
    at = {"distance_m": min(distance, INDOORS_M), "frequency_mhz": frequency}
    slope = _SLOPES.get(context.building or "", _STEEPEST)
    indoors, free = context.answer("indoor-loss", {**at, "n": slope}), context.answer("free-space-loss", at)
    return None if indoors is None or free is None else max(0.0, float(indoors["loss_db"]) - float(free["loss_db"]))


def _floors(context: Context, found: Way) -> None:
    """Floors lose by the kind of building; where that is not known, as in the kind that loses most, or the least."""
    floors = context.opening.floors
    for case, count, worst in ((found.bad, 1, True), (found.good, 0, False)):
        case["floors"] = count if floors is None else min(floors, 10)
        case["building"] = _floors_as(context, case["floors"], case["frequency_mhz"], worst=worst)
    if floors is None:
        found.assumed.append(message("floors"))
        found.unsure = True
    if found.bad["floors"]:
        found.assumed.append(message(_floors_assumed(context.building)))


def _floors_as(context: Context, floors: int, frequency: float, *, worst: bool) -> str:
    """The kind of building whose floors count, of those that the table has."""
    kinds = KINDS.get(context.building or "", ALL_KINDS)
    if len(kinds) == 1:
        return kinds[0]
    at = {"frequency_mhz": frequency, "distance_m": 1.0, "floors": floors}
    answers = {kind: context.answer("indoor-loss", {**at, "building": kind}) for kind in kinds}
    losses = {kind: float(answer["floors_db"]) for kind, answer in answers.items() if answer is not None}
    ranked = sorted(losses, key=lambda kind: losses[kind])
    return kinds[0] if not ranked else ranked[-1] if worst else ranked[0]


def _floors_assumed(building: str | None) -> str:
    if building is None:
        return "floors-any"
    return "floors-differ" if len(KINDS.get(building, ALL_KINDS)) > 1 else "floors-kind"


def _outer(context: Context, found: Way) -> None:
    outer = context.opening.outer_wall
    known = outer not in (None, "unknown")
    found.bad["crosses_outer_wall"] = outer if known else "efficient"
    found.good["crosses_outer_wall"] = outer if known else "no"
    if not known:
        found.assumed.append(message("outer-wall"))


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
    found.assumed.append(message("mounting", loss=say(MOUNTING_DB, "dB")))
    if metal is not False:
        found.assumed.append(message("metal" if metal else "metal-not-known", loss=say(METAL_FRAME_DB, "dB")))
