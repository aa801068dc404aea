"""Where and how the parts go on, held by what the material and the rules of the place allow.

The sensor of a magnet goes on the fixed part and the magnet on the moving part, as the card of places says. Where
anything else goes, its own record says.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from latchside.figures.for_device.worked import Missing
from latchside.library.quantity import Quantity
from latchside.library.traits import place_on
from latchside.planning.figures_for import kept
from latchside.planning.figures_for.context import Context, Device
from latchside.planning.figures_for.ladder import ACCESS, LADDER_M, too_high
from latchside.planning.figures_for.magnet import NO_SPACER, steel_at
from latchside.planning.figures_for.places import PLACES, RECESSED
from latchside.planning.figures_for.shown import in_words, say
from latchside.planning.figures_for.trip import place as place_along
from latchside.planning.holes import no_holes
from latchside.planning.plan import Fixing, Line
from latchside.surveys.survey import Opening

METAL_MM, MAINS_MM = 100.0, 300.0
"""Distance of a transmitter from large metal and from mains: position-transmitter."""
_HARDWARE = {
    "panic-bar": "Panic bar: no part and no cable on the bar, in its swing or at its latch and rods.",
    "magnetic-lock": "Magnetic lock: at the other end of the head from it.",
    "electric-strike": "Electric strike: no hole near its cable. It is tried locked and released.",
    "closer": "Closer: clear of its arm through the whole swing.",
}
"""What the hardware of a door asks of the place of a contact, common practice; in the order of words."""
_STRAY = "Its field can hold a reed closed or open, so it is tried locked and released."
_POWERED = "Powered: the drive is isolated and locked off before hands or tools go near it."
_NO_HOLE = ("glass", "plastic")
_HIGH = ("hinged-door", "double-door", "casement", "tilt-and-turn")


def fixing(context: Context, spacer: Line | None) -> Fixing | None:
    """The fixing of the device, or None for a kind of opening that has no place."""
    place = PLACES.get(context.opening.kind)
    if place is None:
        return None
    sensor, magnet = _where(context)
    steel = steel_at(context)
    if not magnet:
        pieces = ""
    elif context.device.transmitter:
        pieces = f"none at the transmitter; the wired contact: {_of_contact(context.contact, spacer, steel)}"
    else:
        pieces = _pieces(context.device, spacer, steel)
    never = f"Never drilled: {place.never}."
    if kept.stays(context) and not kept.second(context):
        sensor, magnet, pieces = _in_place(context, sensor)
    hold = " ".join((_hold(context), never, *_hardware(context)))
    return Fixing(sensor, magnet, _sentence(pieces) if magnet else "", _height(context), hold)


def _in_place(context: Context, sensor: str) -> tuple[str, str, str]:
    """Of a contact that stays nothing is moved; a transmitter for it is placed by the place of a transmitter."""
    first = sensor if context.device.transmitter else "The contact in place stays where it is."
    if context.device.wired and not context.device.traits.magnetic:
        return first, "", ""
    return first, "The magnet in place stays where it is.", "none: nothing is moved"


def _hardware(context: Context) -> Iterator[str]:
    """What the hardware of the door asks of the place."""
    fitted = context.opening.hardware or ()
    for one, words in _HARDWARE.items():
        if one in fitted:
            stray = one == "magnetic-lock" and (context.device.transmitter or context.device.traits.magnetic)
            yield f"{words} {_STRAY}" if stray else words
    if context.opening.powered:
        yield _POWERED


def _of_contact(contact: Device | None, spacer: Line | None, steel: bool | None) -> str:
    """What goes under the contact on the loop of a transmitter; its own profile tells where its class is not named."""
    if contact is not None:
        return _pieces(contact, spacer, steel)
    return _off_steel(None) if steel else "by its own profile"


def _pieces(device: Device, spacer: Line | None, steel: bool | None) -> str:
    """What goes under or round the halves: to bring them level, and to hold them off steel, where that is known."""
    if device.traits.bracketed:
        return f"the bracket of the set, slid in its slots{_HELD_OFF[steel]}"
    off = _off_steel(device)
    if device.drilled:
        return {True: off, False: _NONE, None: f"{_NONE}; {_IF_STEEL} {off}"}[steel]
    if spacer is None:
        return _NONE
    if steel and spacer.shown == NO_SPACER:
        return off
    more = "as many more under both halves as the set has"
    return spacer.shown + {True: f"; against the steel {more}", False: "", None: f"; {_IF_STEEL} {more}"}[steel]


_NONE = "none in this set"
_IF_STEEL = "where a test magnet finds steel:"
_HELD_OFF = {
    True: ", which holds the magnet off the steel", False: "", None: ", which holds the magnet off any steel",
}  # fmt: skip


def _off_steel(device: Device | None) -> str:
    """What holds a contact off the steel; of any kind where its class is not named."""
    if device is not None and device.drilled:
        return "a plastic sleeve round each half, against the steel"
    if device is not None and not device.traits.bracketed:
        return "the same spacers under both halves, off the steel"
    return "its bracket or packing, against the steel"


def _where(context: Context) -> tuple[str, str]:
    kind, device = context.opening.kind, context.device
    place = PLACES[kind]
    if device.transmitter:
        free = f"at least {say(METAL_MM, 'mm')} from large metal and {say(MAINS_MM, 'mm')} from mains"
        first = f"Transmitter on the fixed part or the wall beside the opening: dry, in reach, {free}."
        if context.contact is not None and not context.contact.traits.magnetic:
            return f"{first} The {context.contact.record.name.lower()} on its loop: {_own(context.contact, kind)}", ""
        return first, _contact_on_loop(context)
    if not device.traits.magnetic:
        return _own(device, kind), ""
    along = _along(context)
    if device.drilled:
        reed, magnet = _recessed(kind)
        return f"Reed {reed}{along}.", f"Magnet {magnet}, on one line with the reed."
    if device.traits.bracketed:
        return (
            f"Housing {place.sensor}{along}, its mark towards the magnet, its tail away from the leaf.",
            f"Magnet on its bracket {place.magnet}, its middle at the mark.",
        )
    return (
        f"Sensor {place.sensor}{along}, its mark towards the magnet.",
        f"Magnet {place.magnet}, its middle at the mark.",
    )


def _own(device: Device, kind: str) -> str:
    """Where the record of a device says that it goes."""
    return place_on(device.record, kind) or _NOWHERE


def _recessed(kind: str) -> tuple[str, str]:
    """Where reed and magnet of a drilled contact go."""
    place = PLACES[kind]
    return RECESSED.get(kind, (place.sensor.replace("on the", "in the", 1), place.magnet))


def _contact_on_loop(context: Context) -> str:
    """Where the wired contact on the loop of a transmitter goes."""
    contact, kind = context.contact, context.opening.kind
    reed, magnet = PLACES[kind].sensor, PLACES[kind].magnet
    if contact is None:
        return f"The magnet of the wired contact goes {magnet}; its other half {reed}."
    name, half = contact.record.name.lower(), "housing" if contact.traits.bracketed else "other half"
    if contact.drilled:
        reed, magnet = _recessed(kind)
    along = _along(replace(context, device=contact, contact=None))
    return f"The magnet of the {name} goes {magnet}; its {half} {reed}{along}."


def _along(context: Context) -> str:
    """How far from the corner it goes: no farther than where it trips in time; a hole no nearer than it may."""
    at = place_along(context)
    if at is None:
        return ""
    low = at.nearest if context.device.drilled and at.nearest < at.farthest else None
    return f", {in_words(Quantity('mm', 'common practice', low=low, high=at.farthest))} from the corner"


def _height(context: Context) -> str:
    height = context.opening.height_m
    if height is None:
        return "Not known." if context.opening.kind not in _HIGH else "Not known; high up, where feet do not come."
    ladder = height > context.rule("ladder-height", LADDER_M)
    how = f"from {ACCESS}" if too_high(context) else "from a ladder or a platform" if ladder else "from the floor"
    return f"{say(height, 'm')} above the floor, {how}."


def _hold(context: Context) -> str:
    opening, device = context.opening, context.device
    if kept.stays(context):
        return _held_in_place(context)
    if device.transmitter and _barred(opening):
        return f"{_ON_THE_WALL} The contact on its loop: no hole and no screw in door or frame."
    if opening.fire_rated or opening.escape:
        return (
            "No new hole and no new screw unless its listing, its certificate or its maker allows it, and the local "
            "code; pads of a stated load only as far as they allow."
        )
    if opening.fire_rated is None or opening.escape is None:
        return f"No hole before it is known whether it is fire-rated or an escape way. After that: {_usual(context)}"
    if opening.drill is False:
        barred = device.traits.needs_hole
        return "Nothing may be drilled, so this contact has no place here." if barred else _stuck(context)
    return _usual(context)


def _usual(context: Context) -> str:
    opening, device = context.opening, context.device
    materials = _materials(opening)
    unsure = " The place is asked for first: drilling is not agreed." if opening.drill is None else ""
    if device.drilled:
        sound = " Only where the material is sound and what lies behind is known." if materials - {"wood"} else ""
        rail = opening.rail_depth_mm
        glass = f" Glass begins {say(rail, 'mm')} from the edge." if rail is not None and opening.glazed else ""
        return f"Drilled: {_hole(device)}.{glass}{sound}{unsure}"
    if device.traits.bracketed:
        tail = ", clamps for the tail" if device.traits.has("clamp") else ""
        return f"Anchors or screws for the housing, locking washers on the bracket{tail}.{unsure}"
    if device.transmitter:
        return "Screws and plugs, because a pull at the cable takes a pad off." + unsure
    if not device.traits.has("pad"):
        return "Screws." + unsure
    if materials & set(_NO_HOLE):
        return _pads(materials)
    if "unknown" in materials or None in materials:
        return "Screws where the material takes them, pads where a hole would harm it." + unsure
    if materials & {"steel", "aluminium"}:
        metal = " of a metal that a magnet does not pull" if device.traits.magnetic else ""
        return f"Screws{metal}, or pads on clean bare metal.{unsure}"
    return "Screws." + unsure


def _hole(device: Device) -> str:
    """Its hole, as far as its ratings state it."""
    try:
        hole, depth = (say(device.ratings.most(name, "mm"), "mm") for name in ("hole-diameter", "hole-depth"))
    except Missing:
        return "across and deep as its label says, which is read before any bit is chosen"
    where = " in each half, more behind the reed" if device.traits.magnetic else ", more behind it for its leads"
    return f"{hole} across and {depth} deep{where}"


def _held_in_place(context: Context) -> str:
    """What stays is not touched; what is added beside it goes on the wall, or is named for the second contact."""
    words = "The sound contact in place stays, and nothing is drilled for it."
    if kept.second(context):
        barred = " No hole and no screw for it." if _barred(context.opening) else ""
        words = f"{words} The second contact is new.{barred}"
    return f"{words} {_ON_THE_WALL}" if context.device.transmitter else words


_NOWHERE = "Nothing says where it goes on such an opening: ask before anything is fixed."
_ON_THE_WALL = (
    "The transmitter is screwed to the wall beside the opening, not to door or frame: a pull at its cable takes a pad "
    "off."
)


def _barred(opening: Opening) -> bool:
    return bool(no_holes(opening))


def _materials(opening: Opening) -> set[str | None]:
    return {opening.leaf_material, opening.frame_material}


def _stuck(context: Context) -> str:
    """Pads, for what they can bear."""
    cable = ""
    if context.device.wired:
        half = "its half" if context.device.traits.magnetic else "the body"
        cable = f" Each pad bears several times the weight of {half}, and the cable lies in stuck trunking."
    return _pads(_materials(context.opening)) + cable


def _pads(materials: set[str | None]) -> str:
    return "Pads on a clean, warm, dry surface, full strength after a day." + (
        " No hole in glass." if "glass" in materials else ""
    )


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."
