"""Where and how the parts go on, held by what the material and the rules of the place allow.

The sensor of a magnet goes on the fixed part and the magnet on the moving part, as the card of places says. Where
anything else goes, its own record says.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from latchside.figures.for_device.worked import Missing
from latchside.library.traits import place_on
from latchside.messages import Message, messages, within
from latchside.planning.access import overhead
from latchside.planning.facts import DOORS
from latchside.planning.figures_for import kept
from latchside.planning.figures_for.context import Context, Device
from latchside.planning.figures_for.ladder import LADDER_M, too_high
from latchside.planning.figures_for.magnet import NO_SPACER, spacers_first, steel_at
from latchside.planning.figures_for.places import Place, place_at
from latchside.planning.figures_for.shown import say, up_to
from latchside.planning.figures_for.trip import place as place_along
from latchside.planning.holes import in_doubt, no_holes, pads_alone
from latchside.planning.plan import Fixing, Line
from latchside.read.forms import BARE
from latchside.surveys.survey import Opening

message = messages(__name__)
METAL_MM, MAINS_MM = 100.0, 300.0
"""Distance of a transmitter from large metal and from mains: position-transmitter."""
_HARDWARE = ("panic-bar", "magnetic-lock", "electric-strike", "closer")
"""Hardware of a door that asks something of the place of a contact, common practice; in the order of words."""
_STEEL = {True: "yes", False: "no", None: "unknown"}
_HIGH = ("hinged-door", "double-door", "casement", "tilt-and-turn")


def fixing(context: Context, spacer: Line | None) -> Fixing | None:
    """The fixing of the device, or None for a kind of opening that has no place."""
    place = place_at(context.opening)
    if place is None:
        return None
    sensor, magnet = _where(context, place)
    steel = steel_at(context)
    if not magnet:
        pieces = ""
    elif context.device.transmitter:
        pieces = _of_contact(context.contact, spacer, steel)
    else:
        pieces = _pieces(context.device, spacer, steel, "own")
    drawn = _drawn(context.sensing.device, spacer, steel) if magnet else BARE
    if kept.stays(context) and not kept.second(context):
        sensor, magnet, pieces = _in_place(context, sensor)
        drawn = BARE
    hold = " ".join((*_hold(context), message("never", parts=place.never), *_hardware(context)))
    return Fixing(sensor, magnet, pieces, _height(context), hold, drawn)


def _in_place(context: Context, sensor: str) -> tuple[str, str, str]:
    """Of a contact that stays nothing is moved; a transmitter for it is placed by the place of a transmitter."""
    first = sensor if context.device.transmitter else message("sensor-stays")
    if context.device.wired and not context.device.traits.magnetic:
        return first, "", ""
    return first, message("magnet-stays"), message("nothing-moved")


def _hardware(context: Context) -> Iterator[Message]:
    """What the hardware of the door asks of the place."""
    fitted = context.opening.hardware or ()
    for one in _HARDWARE:
        if one in fitted:
            stray = one == "magnetic-lock" and (context.device.transmitter or context.device.traits.magnetic)
            yield message("magnetic-lock-stray" if stray else one)
    if context.opening.powered:
        yield message("powered")


def _of_contact(contact: Device | None, spacer: Line | None, steel: bool | None) -> str:
    """What goes under the contact on the loop of a transmitter; its own profile tells where its class is not named."""
    if contact is not None:
        return _pieces(contact, spacer, steel, "on-loop")
    return message("pieces-packing" if steel else "pieces-profile")


def _pieces(device: Device, spacer: Line | None, steel: bool | None, contact: str) -> str:
    """What goes under or round the halves: to bring them level, and to hold them off steel, where that is known.

    `contact` is `own` for the device itself and `on-loop` for the wired contact of a transmitter.
    """
    if device.traits.bracketed:
        return message("pieces-bracket", steel=_STEEL[steel], contact=contact)
    if device.drilled:
        id_ = {True: "pieces-sleeve", False: "pieces-none", None: "pieces-sleeve-on-steel"}[steel]
        return message(id_, contact=contact)
    if spacer is None:
        return message("pieces-none", contact=contact)
    if steel and spacer.shown == NO_SPACER:
        return message("pieces-both-halves", contact=contact)
    spacers = spacers_first(spacer) if contact == "own" else spacer.shown
    return message("pieces-spacers", spacers=spacers, steel=_STEEL[steel], contact=contact)


def _drawn(device: Device, spacer: Line | None, steel: bool | None) -> str:
    """The same as a drawing shows it. Pieces that only a trial asks for, as for steel that may be there, are not drawn.

    A contact on the loop of a transmitter whose class is not named is drawn on the surface.
    """
    if device.traits.bracketed:
        return "bracket"
    if device.drilled:
        return "sleeved" if steel else "drilled"
    if spacer is None:
        return "both-raised" if steel and device.transmitter else "surface"
    values = spacer.shown.values if isinstance(spacer.shown, Message) else {}
    under = values.get("under") if values.get("count") else None
    return "both-raised" if steel else f"{under}-raised" if under else "surface"


def _where(context: Context, place: Place) -> tuple[str, str]:
    kind, device = context.opening.kind, context.device
    if device.transmitter:
        at_end = "yes" if context.opening.cable or context.opening.old_contact else "no"
        first = message("transmitter", metal=say(METAL_MM, "mm"), mains=say(MAINS_MM, "mm"), end=at_end)
        if context.contact is not None and not context.contact.traits.magnetic:
            name, where = within(context.contact.record.name), _own(context.contact, kind)
            return f"{first} {message('on-loop', contact=name, place=where)}", ""
        return first, _contact_on_loop(context, place)
    if not device.traits.magnetic:
        return _own(device, kind), ""
    sensor, magnet = _halves(device, place)
    ids = ("reed", "reed-magnet") if device.drilled else ("sensor", "magnet")
    if device.traits.bracketed and not device.drilled:
        ids = ("housing", "housing-magnet")
    return message(ids[0], place=sensor, along=_along(context), kind=kind), message(ids[1], place=magnet)


def _own(device: Device, kind: str) -> str:
    """Where the record of a device says that it goes."""
    return place_on(device.record, kind) or message("no-place")


def _halves(device: Device, place: Place) -> tuple[str, str]:
    """Where sensor and magnet of a contact go."""
    return (place.drilled_reed, place.drilled_magnet) if device.drilled else (place.sensor, place.magnet)


def _contact_on_loop(context: Context, place: Place) -> str:
    """Where the wired contact on the loop of a transmitter goes."""
    contact = context.contact
    if contact is None:
        return message("on-loop-any", magnet=place.magnet, reed=place.sensor)
    reed, magnet = _halves(contact, place)
    along = _along(replace(context, device=contact, contact=None))
    id_ = "on-loop-bracket" if contact.traits.bracketed else "on-loop-magnet"
    name, kind = within(contact.record.name), context.opening.kind
    return message(id_, contact=name, magnet=magnet, reed=reed, along=along, kind=kind)


def _along(context: Context) -> str:
    """How far from the corner it goes: no farther than where it trips in time; a hole no nearer than it may."""
    at = place_along(context)
    if at is None:
        return "none"
    low = at.nearest if context.device.drilled and at.nearest < at.farthest else None
    return up_to(low, at.farthest, "mm")


def _height(context: Context) -> str:
    height = context.opening.height_m
    if height is None:
        return message("height-unknown-high" if context.opening.kind in _HIGH else "height-unknown")
    ladder = height > context.rule("ladder-height", LADDER_M)
    above = "height-platform" if overhead(context.opening) else "height-ladder"
    how = "height-access" if too_high(context) else above if ladder else "height-floor"
    return message(how, height=say(height, "m"))


def _hold(context: Context) -> Iterator[Message]:
    """How it is held, in sentences."""
    opening, device = context.opening, context.device
    if kept.stays(context):
        yield from _held_in_place(context)
    elif device.transmitter and _barred(opening):
        yield message("on-the-wall")
        yield message("no-hole-on-loop")
    elif opening.fire_rated or opening.escape:
        yield message("no-hole")
    elif doubt := in_doubt(opening):
        yield message("before-known", what=doubt, usual=" ".join(_usual(context)))
    elif opening.drill is not False:
        yield from _usual(context)
    elif device.traits.needs_hole:
        yield message("no-place-for-holes")
    else:
        yield from _stuck(context)


def _usual(context: Context) -> Iterator[Message]:
    """How it is held where nothing bars a hole."""
    opening, device = context.opening, context.device
    materials = _materials(opening)
    if device.traits.needs_hole and "glass" in materials:
        yield message("no-place-for-holes")
        return
    if device.drilled:
        yield from _drilled(context)
    elif device.traits.bracketed:
        yield message("bracket-and-tail" if device.traits.has("clamp") else "bracket")
    elif device.transmitter:
        yield message("screws-and-plugs")
    elif pads_alone(opening, device.traits):
        yield from _pads(materials)
        return
    elif not device.traits.has("pad"):
        yield message("screws")
    elif "unknown" in materials or None in materials:
        yield message("screws-or-pads")
    elif "aluminium" in materials:
        yield message("screws-aluminium", magnet="yes" if device.traits.magnetic else "no")
        yield message("inner-chamber")
    elif "steel" in materials:
        yield message("screws-metal-magnet" if device.traits.magnetic else "screws-metal")
    else:
        yield message("screws")
    if opening.glazed and opening.kind in DOORS and not (device.drilled or device.transmitter):
        yield _clear_of_glass(opening)
    if opening.drill is None:
        yield message("not-agreed")


def _clear_of_glass(opening: Opening) -> Message:
    """A screw may come no nearer to the pane than a bit."""
    if opening.rail_depth_mm is None:
        return message("glass-clear")
    return message("glass-clear-at", rail=say(opening.rail_depth_mm, "mm"))


def _drilled(context: Context) -> Iterator[Message]:
    """Its hole, as far as its ratings state it, and what to know before it is drilled."""
    opening, device = context.opening, context.device
    try:
        hole, depth = (say(device.ratings.most(name, "mm"), "mm") for name in ("hole-diameter", "hole-depth"))
        yield message("drilled" if device.traits.magnetic else "drilled-plain", hole=hole, depth=depth)
    except Missing:
        yield message("drilled-by-label")
    if opening.rail_depth_mm is not None and opening.glazed:
        yield message("glass", rail=say(opening.rail_depth_mm, "mm"))
    if _materials(opening) - {"wood"}:
        yield message("sound")
    if "aluminium" in _materials(opening):
        yield message("inner-chamber")


def _held_in_place(context: Context) -> Iterator[Message]:
    """What stays is not touched; what is added beside it goes on the wall, or is named for the second contact."""
    yield message("sound-stays")
    if kept.second(context):
        yield message("second-new")
        if _barred(context.opening):
            yield message("second-no-hole")
    if context.device.transmitter:
        yield message("on-the-wall")


def _barred(opening: Opening) -> bool:
    return bool(no_holes(opening))


def _materials(opening: Opening) -> set[str | None]:
    return {opening.leaf_material, opening.frame_material}


def _stuck(context: Context) -> Iterator[Message]:
    """Pads, for what they can bear."""
    yield from _pads(_materials(context.opening))
    if context.device.wired:
        yield message("pads-bear-half" if context.device.traits.magnetic else "pads-bear-body")


def _pads(materials: set[str | None]) -> Iterator[Message]:
    yield message("pads")
    if "glass" in materials:
        yield message("no-hole-in-glass")
