"""What goes on the van: parts, consumables and tools, with quantities, spares, and what each is for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil
from typing import Literal

from latchside.figures.rounding import short
from latchside.library.model import Library, Record
from latchside.library.text import plain
from latchside.library.traits import BODY, Part, traits
from latchside.planning.at_opening import AtOpening
from latchside.planning.cable import cable
from latchside.planning.figures_for.ladder import ACCESS
from latchside.planning.house import House, Rules
from latchside.planning.plan import Item
from latchside.surveys.survey import ControlUnit, Survey

RESISTORS = {"none": 0, "series": 1, "parallel": 1, "double": 2, "double-across": 2}
"""End-of-line resistors at each loop, by layout."""

_CONSUMED = {"screw", "pad", "joint", "sleeve", "clamp"}
"""Roles of parts that are used up."""


@dataclass(frozen=True)
class Spares:
    """How many spares go with a quantity."""

    percent: float
    least: float

    def of(self, quantity: float) -> float:
        """Spares, rounded up; none at all where the survey asks for none."""
        return max(self.least, ceil(quantity * self.percent / 100 - 1e-9)) if quantity and self.percent else 0


def items(
    survey: Survey, parts: Sequence[AtOpening], procedures: Iterable[str], library: Library, house: House, rules: Rules
) -> tuple[Item, ...]:
    """Everything for the job. `procedures` are those of the work, in its order: they name the tools."""
    spares = Spares(rules.spare_percent, house["spare-least"])
    found = [*_devices(parts, spares), *_contacts(parts, spares)]
    found += [*_resistors(survey.control_unit, parts, spares), *_of_sets(parts, spares)]
    found += [*cable(survey, parts, library, house, rules), *_supplies(parts, spares), *_access(parts, house)]
    order = ("part", "consumable", "tool")
    return tuple(sorted((*found, *_tools(procedures, library)), key=lambda item: order.index(item.sort)))


def _piece(
    sort: Literal["part", "consumable"], name: str, quantity: float, spares: Spares, used_for: str, unit: str = "piece"
) -> Item:
    return Item(sort, name, quantity, spares.of(quantity), unit, used_for)


def classes(parts: Iterable[AtOpening]) -> tuple[Record, ...]:
    """The device classes of a job, each once, in the order of their ids."""
    return tuple(sorted({part.device for part in parts if part.device is not None}, key=lambda one: one.id))


def _devices(parts: Sequence[AtOpening], spares: Spares) -> Iterator[Item]:
    for device in classes(parts):
        here = [part for part in parts if part.device is device]
        names = ", ".join(one.name.lower() for one in traits(device).parts if one.role in BODY)
        item = _piece("part", device.name, sum(part.sets for part in here), spares, _places(here), "set")
        if item.quantity:
            yield replace(item, used_for=f"{item.used_for} Each with {names}.", record=f"device/{device.id}")


def _contacts(parts: Sequence[AtOpening], spares: Spares) -> Iterator[Item]:
    """Wired contacts for the loops of transmitters, which bring none of their own: of a class where one is named."""
    bare = [part for part in parts if part.on_loop]
    why = "It is for the loop of a transmitter."
    for contact in sorted({part.contact for part in bare if part.contact is not None}, key=lambda one: one.id):
        here = [part for part in bare if part.contact is contact]
        name, quantity = f"{contact.name}, for a transmitter", sum(part.on_loop for part in here)
        each = ", ".join(one.name.lower() for one in traits(contact).parts if not one.apart)
        item = _piece("part", name, quantity, spares, f"{_places(here)} {why} Each with {each}.", "set")
        yield replace(item, record=f"device/{contact.id}")
    rest = [part for part in bare if part.contact is None]
    if rest:
        quantity = sum(part.on_loop for part in rest)
        yield _piece("part", "Wired contact with magnet", quantity, spares, f"{_places(rest)} {why}")


def _resistors(unit: ControlUnit, parts: Sequence[AtOpening], spares: Spares) -> Iterator[Item]:
    """Those of the control unit's loops, and those of transmitters, which ask for their own value."""
    each = RESISTORS.get(unit.layout or "series", 1)
    known = "" if unit.layout else " How many each loop takes is not known: one is counted."
    used_for = f"At the far contact of each loop, never in the cabinet.{known}"
    loops = sum(part.zones for part in parts if part.wired)
    for value, count in Counter(_values(unit, each)).items():
        if loops:
            yield _piece("part", f"End-of-line resistor, {value}", count * loops, spares, used_for)
    ends = sum(part.zones for part in parts if part.transmitter)
    if ends:
        used_for = "At the far contact of each transmitter's loop, where its label asks for one."
        name = "End-of-line resistor, of the value on the label of the transmitter"
        yield _piece("part", name, ends, spares, used_for)


def _values(unit: ControlUnit, each: int) -> Iterator[str]:
    """The value of each resistor of a loop, in words."""
    for ohm, which in ((unit.end_of_line_ohm, ""), (unit.second_resistor_ohm, "second of the pair, "))[:each]:
        if ohm is None:
            yield f"{which}of the value the control unit asks"
        else:
            yield short(ohm / 1000, "kohm", 6) if ohm >= 1000 else short(ohm, "ohm", 6)


def _of_sets(parts: Sequence[AtOpening], spares: Spares) -> Iterator[Item]:
    """Batteries and spacers, and what a set uses up; resistors are counted by their loops."""
    for device in classes(parts):
        here = [part for part in parts if part.device is device]
        for one in traits(device).parts:
            if one.role in BODY or one.role == "resistor":
                continue
            quantity = one.quantity * sum(_how_often(one, part) for part in here)
            if quantity:
                sort: Literal["part", "consumable"] = "consumable" if one.role in _CONSUMED else "part"
                name = f"{one.name}, {device.name.lower()}"
                yield _piece(sort, name, quantity, spares, _used_for(one, device))


def _how_often(one: Part, part: AtOpening) -> int:
    """How many times the quantity of a set goes to an opening."""
    if one.role == "joint":
        return part.contacts
    if one.role == "screw" and not part.drilled and part.traits is not None and part.traits.has("pad"):
        return 0
    if one.supplied == "on-steel" and part.opening.steel in ("none", None):
        return 0
    return part.sets


def _used_for(one: Part, device: Record) -> str:
    known = {**_FOR, **(_FOR_MAGNET if traits(device).magnetic else {})}
    used_for = known.get(one.role, "One of the parts of the {}.").format(device.name.lower())
    return f"{used_for} Not in every set." if one.supplied == "some-sets" else used_for


_FOR = {
    "cell": "One cell for each {}, of the type that its label names.",
    "screw": "For the {}, of the length that the ground asks for.",
    "pad": "For the {}, where nothing may be drilled and to hold it while it is tried.",
    "joint": "To join the leads of each contact to its cable, small enough for its hole or its box.",
    "box": "Where the tail of the {} meets its cable, above wheels and water.",
    "clamp": "To hold the tail of the {} on its way to the box.",
}
_FOR_MAGNET = {
    "spacer": "To lift the magnet of the {} into line.",
    "sleeve": "To keep each half of the {} clear of the steel round it.",
    "bracket": "To bring the magnet of the {} over its housing and off the steel.",
}
"""What parts are for by their roles, and what those are for that only a magnet asks for."""


def _supplies(parts: Sequence[AtOpening], spares: Spares) -> Iterator[Item]:
    fitted = [part for part in parts if part.fitted]
    cells, cables = sum(part.cells for part in fitted), sum(part.zones for part in fitted if part.loop)
    joined = sum(part.contacts for part in fitted if part.transmitter)
    if joined:
        yield _piece("consumable", "Insulated joints", 2 * joined, spares, "Between contact and transmitter cable.")
    if fitted:
        yield _piece("consumable", "Bag with label", len(fitted), spares, "One bag for each opening.")
    if cells:
        yield _piece("consumable", "Date label for a cell", cells, spares, "The day it went in, on each cell.")
        yield Item("consumable", "Insulating tape", 1, 0, "roll", "Over the ends of each old cell.")
    if cables:
        yield _piece("consumable", "Cable label", 2 * cables, spares, "The opening, at each end of its cable.")


def _access(parts: Sequence[AtOpening], house: House) -> Iterator[Item]:
    """What work takes that is too high for a ladder."""
    high = [part for part in parts if part.fitted and (part.opening.height_m or 0.0) > house["ladder-most"]]
    if high:
        yield Item(
            "tool", ACCESS.removeprefix("a ").capitalize(), 1, 0, "piece", f"{_places(high)} Too high for a ladder."
        )


def _tools(procedures: Iterable[str], library: Library) -> Iterator[Item]:
    """Each tool once, in the order in which the work first asks for it."""
    met: dict[str, None] = {}
    for id_ in procedures:
        record = library.find("procedure", id_)
        met.update(dict.fromkeys(record.listed("tools") if record else ()))
    for id_ in met:
        tool = library.find("tool", id_)
        if tool:
            name = tool.name[:1].upper() + tool.name[1:]
            yield Item("tool", name, 1, 0, "piece", plain(tool["summary"]), f"tool/{id_}")


def _places(parts: Sequence[AtOpening]) -> str:
    """The openings that something is for, by their spoken names."""
    names = [part.spoken for part in parts]
    shown = ", ".join(names[:8])
    return f"For {shown} and {len(names) - 8} more." if len(names) > 8 else f"For {shown}."
