"""Where and how the parts go on: sensor on the fixed part, magnet on the moving part, held by what the material and
the rules of the place allow.
"""

from __future__ import annotations

from latchside.jobs.figures_for.context import Context, Device
from latchside.jobs.figures_for.ladder import LADDER_M
from latchside.jobs.figures_for.magnet import steel_at
from latchside.jobs.figures_for.places import PLACES, RECESSED
from latchside.jobs.figures_for.shown import in_words, say
from latchside.jobs.plan import Fixing, Line
from latchside.library.quantity import Quantity

CORNER = Quantity("mm", "common practice", low=50.0, high=150.0)
"""Distance of a drilled contact from the latch-side corner: position-recessed-contact."""
NEAR_CORNER = Quantity("mm", "common practice", high=150.0)
"""Distance of a surface set from the latch-side corner: position-surface-contact."""
METAL_MM, MAINS_MM = 100.0, 300.0
"""Distance of a transmitter from large metal and from mains: position-transmitter."""
_NO_HOLE = ("glass", "plastic")
_CORNERED = ("hinged-door", "double-door", "casement")
_HIGH = ("hinged-door", "double-door", "casement", "tilt-and-turn")


def fixing(context: Context, spacer: Line | None) -> Fixing | None:
    """The fixing of the device, or None for a kind of opening that has no place."""
    place = PLACES.get(context.opening.kind)
    if place is None:
        return None
    sensor, magnet = _where(context)
    steel = steel_at(context)
    pieces = spacer.shown if spacer is not None else "none in this set"
    if steel and context.device.drilled:
        pieces = "a plastic sleeve round each half, against the steel"
    elif steel and spacer is not None:
        pieces = f"{pieces}, and as many more under both halves as the set has, against the steel"
    elif context.device.transmitter:
        own = "its bracket or packing, against the steel" if steel else "by its own profile"
        pieces = f"none at the transmitter; the wired contact: {own}"
    elif _bracketed(context.device):
        pieces = "the bracket of the set, slid in its slots" + (
            ", which holds the magnet off the steel" if steel else ""
        )
    never = f"Never drilled: {place.never}."
    return Fixing(sensor, magnet, _sentence(pieces), _height(context), f"{_hold(context)} {never}")


def _where(context: Context) -> tuple[str, str]:
    kind, device = context.opening.kind, context.device
    place = PLACES[kind]
    if device.transmitter:
        free = f"at least {say(METAL_MM, 'mm')} from large metal and {say(MAINS_MM, 'mm')} from mains"
        name = context.contact.record.name.lower() if context.contact else "wired contact"
        half = "housing" if context.contact and _bracketed(context.contact) else "other half"
        contact = f"The magnet of the {name} goes {place.magnet}; its {half} {place.sensor}."
        return f"Transmitter on the fixed part or the wall beside the opening: dry, in reach, {free}.", contact
    if device.drilled:
        reed, magnet = RECESSED.get(kind, (place.sensor.replace("on the", "in the", 1), place.magnet))
        return f"Reed {reed}{_corner(kind, CORNER)}.", f"Magnet {magnet}, on one line with the reed."
    if _bracketed(device):
        return (
            f"Housing {place.sensor}, its mark towards the magnet, its tail away from the leaf.",
            f"Magnet on its bracket {place.magnet}, its middle at the mark.",
        )
    return (
        f"Sensor {place.sensor}{_corner(kind, NEAR_CORNER)}, its mark towards the magnet.",
        f"Magnet {place.magnet}, its middle at the mark.",
    )


def _bracketed(device: Device) -> bool:
    """Its magnet comes on a bracket with slots, and its reed in a heavy housing with a tail."""
    return "bracket" in device.parts


def _corner(kind: str, distance: Quantity) -> str:
    return f", {in_words(distance)} from the corner" if kind in _CORNERED else ""


def _height(context: Context) -> str:
    height = context.opening.height_m
    if height is None:
        return "Not known." if context.opening.kind not in _HIGH else "Not known; high up, where feet do not come."
    ladder = height > context.rule("ladder-height", LADDER_M)
    how = "from a ladder or a platform" if ladder else "from the floor"
    return f"{say(height, 'm')} above the floor, {how}."


def _hold(context: Context) -> str:
    opening, device = context.opening, context.device
    if device.wired and opening.old_contact:
        return "The sound contact in place stays, and nothing is drilled."
    if opening.fire_rated or opening.escape:
        return "No hole and no screw without its certificate and the local code, and pads only as far as they allow."
    if opening.fire_rated is None or opening.escape is None:
        return f"No hole before it is known whether it is fire-rated or an escape way. After that: {_usual(context)}"
    if opening.drill is False:
        if _bracketed(device):
            return "Leaf and frame take no screw: housing on wall or floor, the magnet on a clamped bracket."
        return "Nothing may be drilled, so this contact has no place here." if device.drilled else _stuck(context)
    return _usual(context)


def _usual(context: Context) -> str:
    opening, device, ratings = context.opening, context.device, context.device.ratings
    materials = {opening.leaf_material, opening.frame_material}
    unsure = " The place is asked for first: drilling is not agreed." if opening.drill is None else ""
    if device.drilled:
        hole, depth = (say(ratings.most(name, "mm"), "mm") for name in ("hole-diameter", "hole-depth"))
        sound = " Only where the material is sound and what lies behind is known." if materials - {"wood"} else ""
        return f"Drilled: {hole} across and {depth} deep in each half, more behind the reed.{sound}{unsure}"
    if _bracketed(device):
        return "Anchors or screws for the housing, locking washers on the bracket, clamps for the tail." + unsure
    if device.transmitter:
        return "Screws and plugs, because a pull at the cable takes a pad off." + unsure
    if materials & set(_NO_HOLE):
        return _pads(materials)
    if "unknown" in materials or None in materials:
        return "Screws where the material takes them, pads where a hole would harm it." + unsure
    if materials & {"steel", "aluminium"}:
        return "Screws of a metal that a magnet does not pull, or pads on clean bare metal." + unsure
    return "Screws." + unsure


def _stuck(context: Context) -> str:
    opening = context.opening
    pull = " Only where nobody can pull at the cable." if context.device.transmitter else ""
    return _pads({opening.leaf_material, opening.frame_material}) + pull


def _pads(materials: set[str | None]) -> str:
    return "Pads on a clean, warm, dry surface, full strength after a day." + (
        " No hole in glass." if "glass" in materials else ""
    )


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."
