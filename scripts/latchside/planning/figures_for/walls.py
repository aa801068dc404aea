"""What one wall takes from the radio, in a bad spot and in a good one.

The two faces of a sheet echo, so its loss does not rise steadily with its thickness: a thicker wall can take less.
Therefore the bad case is the most over all thicknesses that the wall may have, and the good case the least. A wall
that nobody measured has a wide range; one that was measured has the unit to which its thickness was read.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from math import ceil

from latchside.figures.models.slab_loss import MATERIALS, SPEED_OF_LIGHT, refraction, slab_loss
from latchside.messages import Message, listed, messages
from latchside.planning.figures_for.context import Context
from latchside.planning.figures_for.shown import say
from latchside.surveys.survey import Wall

message = messages(__name__)
SHUT_OFF_DB = 100.0
"""A whole sheet of metal lets nothing through: the most that an obstacle counts."""
THINNER, THICKER = 4.0, 2.0
"""A wall that nobody measured is from a quarter to twice as thick as the house's figure for it."""
FOILED = ("foil", "metal")
_THICKNESS_MM = {
    "brick": 200.0, "concrete": 200.0, "plasterboard": 26.0, "wood": 50.0, "glass": 12.0, "chipboard": 25.0,
    "plywood": 25.0,
}  # fmt: skip
_DRAWN_OUT = ("brick", "concrete", "plasterboard", "chipboard", "plywood")
_UNITS_MM = (25.4, 12.7, 10.0, 6.35)
"""An inch, half an inch, a centimetre and a quarter of an inch: a whole number of them was read no finer."""
_THINNEST_MM, _THICKEST_MM = 0.1, 1000.0
_TRIES = 128
"""Thicknesses that are tried for each swing of the echo."""


def wall_losses(context: Context, wall: Wall, frequency: float) -> tuple[float, float] | None:
    """Loss in dB in a bad and in a good spot, at a frequency in MHz; None where the material has no figure."""
    if wall.material in FOILED:
        return _foil(context, wall.material, frequency)
    if wall.material not in MATERIALS:
        return None
    thinnest, thickest = thicknesses(context, wall)
    least, most = _loss_range(wall.material, thinnest, thickest, frequency)
    return min(SHUT_OFF_DB, most), min(SHUT_OFF_DB, least)


def thicknesses(context: Context, wall: Wall) -> tuple[float, float]:
    """The thinnest and the thickest, in mm, that the wall may be."""
    if wall.thickness_mm is None:
        house = context.rule(f"wall-{wall.material}", _THICKNESS_MM.get(wall.material, 200.0))
        low, high = house / THINNER, house * THICKER
    else:
        off = read_to(wall.thickness_mm) / 2
        low, high = wall.thickness_mm - off, wall.thickness_mm + off
    return min(max(low, _THINNEST_MM), _THICKEST_MM), min(max(high, _THINNEST_MM), _THICKEST_MM)


def read_to(thickness: float) -> float:
    """The unit, in mm, to which a thickness was read, as far as the figure shows it: 200 may be 196 or 204, 102 not."""
    whole = (unit for unit in _UNITS_MM if thickness and abs(thickness / unit - round(thickness / unit)) < 1e-6)
    return next(whole, 1.0)


@lru_cache(maxsize=4096)
def _loss_range(material: str, thinnest: float, thickest: float, frequency: float) -> tuple[float, float]:
    """The least and the most loss in dB over a range of thickness in mm."""
    sheet = refraction(MATERIALS[material], frequency)
    swing = SPEED_OF_LIGHT / (2e3 * frequency * sheet.slowed)  # from one echo to the next, in mm
    steps = max(2, ceil((thickest - thinnest) / swing * _TRIES))
    tried = (thinnest + (thickest - thinnest) * step / steps for step in range(steps + 1))
    losses = [max(0.0, slab_loss(sheet, one, frequency)) for one in tried]
    return min(losses), max(losses)


def _foil(context: Context, material: str, frequency: float) -> tuple[float, float] | None:
    """As walls with foil and coated glass do in nine tenths and in a tenth of places; through metal itself, nothing."""
    at = {"frequency_mhz": frequency, "building": "efficient"}
    most, least = (context.answer("entry-loss", {**at, "percent": share}) for share in (90.0, 10.0))
    if most is None or least is None:
        return None
    return SHUT_OFF_DB if material == "metal" else float(most["loss_db"]), float(least["loss_db"])


def walls_assumed(context: Context, walls: tuple[Wall, ...]) -> Iterator[Message]:
    """What is assumed of the walls."""
    sheets = [wall for wall in walls if wall.material not in FOILED]
    for material in sorted({wall.material for wall in sheets if wall.thickness_mm is None}):
        low, high = thicknesses(context, Wall(material))
        yield message("not-measured", material=material, low=say(low, "mm"), high=say(high, "mm"))
    if any(wall.thickness_mm is not None and read_to(wall.thickness_mm) > 1 for wall in sheets):
        yield message("not-to-the-millimetre")
    drawn_out = sorted({wall.material for wall in walls} & set(_DRAWN_OUT))
    if drawn_out:
        first, *others = drawn_out
        names: list[str] = [message("first", material=first), *(message("within", material=one) for one in others)]
        yield message("drawn-out", materials=listed(names))
    for material in sorted({wall.material for wall in walls} & set(FOILED)):
        yield message(material)
