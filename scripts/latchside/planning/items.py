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
from latchside.messages import Message, listed, messages, within
from latchside.planning.access import takes_platform
from latchside.planning.at_opening import AtOpening
from latchside.planning.cable import cable
from latchside.planning.facts import words
from latchside.planning.house import House, Rules
from latchside.planning.plan import Caution, Item
from latchside.surveys.survey import ControlUnit, Opening, Survey

message = messages(__name__)
RESISTORS = {"none": 0, "series": 1, "parallel": 1, "double": 2, "double-across": 2}
"""End-of-line resistors at each loop, by layout."""
_IN_LINE = ("series", "double", "double-across")
"""Layouts with a resistor in line with a conductor: it takes a joint more than the two ends of the contact."""

_CONSUMED = {"screw", "pad", "joint", "sleeve", "clamp"}
"""Roles of parts that are used up."""
_FOR_MAGNET = {"spacer", "sleeve", "bracket"}
"""Roles with a use of their own only where a magnet operates the device."""
_EACH = frozenset({
    "gap-gauge", "steel-rule", "torch", "marker", "ladder", "multimeter", "drill", "pilot-bit", "screwdriver",
    "eye-protection", "dust-mask", "wire-stripper", "low-tack-tape",
})  # fmt: skip
"""Tools that each technician has in hand at an opening of their own."""
_GUARDED = ("sprung-and-powered-doors", "lead-paint", "glass")
"""Cautions of an opening against which something on the van guards."""
_BORED = ("brick", "concrete")
_NAMED = 8
"""At most this many openings are named as those that a thing is for."""


@dataclass(frozen=True)
class Spares:
    """The rule for spares."""

    percent: float
    least: float

    def of(self, quantity: float) -> float:
        """The spares for a quantity, rounded up; none at all where the survey asks for none."""
        return max(self.least, ceil(quantity * self.percent / 100 - 1e-9)) if quantity and self.percent else 0


def items(
    survey: Survey, parts: Sequence[AtOpening], procedures: Iterable[str], warnings: Iterable[Caution],
    library: Library, house: House, rules: Rules,
) -> tuple[Item, ...]:  # fmt: skip
    """Everything for the job, with what guards against its cautions.

    `procedures` are those of the work, in its order: they name the tools.
    """
    spares = Spares(rules.spare_percent, house["spare-least"])
    found = [*_devices(parts, spares), *_contacts(parts, spares)]
    found += [*_resistors(survey.control_unit, parts, spares), *_of_sets(parts, spares)]
    found += [
        *cable(survey, parts, library, house, rules),
        *_supplies(survey.control_unit, parts, spares),
        *_access(parts, house),
        *_guards(parts, warnings),
    ]
    order = ("part", "consumable", "tool")
    return tuple(
        sorted((*found, *_tools(procedures, library, rules.technicians)), key=lambda item: order.index(item.sort))
    )


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
        names = [within(one.name) for one in traits(device).parts if one.role in BODY]
        used_for = message("set", places=_places(here), parts=listed(names, "unit"))
        item = _piece("part", device.name, sum(part.sets for part in here), spares, used_for, "set")
        if item.quantity:
            yield replace(item, record=f"device/{device.id}", openings=_ids(part for part in here if part.sets))


def _contacts(parts: Sequence[AtOpening], spares: Spares) -> Iterator[Item]:
    """Wired contacts for the loops of transmitters, which come without one."""
    bare = [part for part in parts if part.on_loop]
    for contact in sorted({part.contact for part in bare if part.contact is not None}, key=lambda one: one.id):
        here = [part for part in bare if part.contact is contact]
        name, quantity = message("loop-contact", contact=contact.name), sum(part.on_loop for part in here)
        each = listed([within(one.name) for one in traits(contact).parts if one.role in BODY], "unit")
        used_for = message("loop-contact.use", places=_places(here), parts=each)
        item = _piece("part", name, quantity, spares, used_for, "set")
        yield replace(item, record=f"device/{contact.id}", openings=_ids(here))
    rest = [part for part in bare if part.contact is None]
    if rest:
        quantity = sum(part.on_loop for part in rest)
        used_for = message("loop-contact-any.use", places=_places(rest))
        yield replace(_piece("part", message("loop-contact-any"), quantity, spares, used_for), openings=_ids(rest))


def _resistors(unit: ControlUnit, parts: Sequence[AtOpening], spares: Spares) -> Iterator[Item]:
    """Those of the control unit's loops, and those of transmitters, which need a value of their own."""
    each = RESISTORS.get(unit.layout or "series", 1)
    used_for = message("resistor.use" if unit.layout else "resistor.use-layout-unknown")
    loops = sum(part.zones for part in parts if part.wired)
    for value, count in Counter(_values(unit, each)).items():
        if loops:
            yield _piece("part", message("resistor", value=value), count * loops, spares, used_for)
    ends = sum(part.zones for part in parts if part.transmitter)
    if ends:
        yield _piece("part", message("resistor-transmitter"), ends, spares, message("resistor-transmitter.use"))


def _values(unit: ControlUnit, each: int) -> Iterator[str]:
    """The value of each resistor of a loop, for a reader."""
    for ohm, unknown in ((unit.end_of_line_ohm, "value-asked"), (unit.second_resistor_ohm, "second-value-asked"))[
        :each
    ]:
        if ohm is None:
            yield message(unknown)
        else:
            yield short(ohm / 1000, "kohm", 6) if ohm >= 1000 else short(ohm, "ohm", 6)


def _of_sets(parts: Sequence[AtOpening], spares: Spares) -> Iterator[Item]:
    """Cells and spacers, and what a set uses up; resistors are counted by their loops, joints where they are made."""
    for device in _kinds(parts):
        for one in traits(device).parts:
            if one.role in BODY or one.role == "resistor":
                continue
            times = {part.opening.id: _how_often(one, part, device) for part in parts}
            quantity = one.quantity * sum(times.values())
            if quantity:
                sort: Literal["part", "consumable"] = "consumable" if one.role in _CONSUMED else "part"
                name = message("of-set", part=one.name, device=within(device.name))
                to = tuple(id_ for id_, often in times.items() if often)
                yield replace(_piece(sort, name, quantity, spares, _used_for(one, device)), openings=to)


def _kinds(parts: Sequence[AtOpening]) -> tuple[Record, ...]:
    """The classes of a job, with those of the contacts on the loops of its transmitters."""
    on_loops = {part.contact for part in parts if part.contact is not None and part.on_loop}
    return tuple(sorted({*classes(parts), *on_loops}, key=lambda one: one.id))


def _how_often(one: Part, part: AtOpening, device: Record) -> int:
    """How many times an opening takes the quantity of a set of the class, fitted as it is or on a loop."""
    own = part.device is device
    if not own and (part.contact is not device or one.role == "joint"):
        return 0
    if one.role == "joint":
        return part.contacts
    if one.role == "screw" and (not part.drilled if own else part.unscrewed(traits(device))):
        return 0
    no_steel = words(part.opening, "steel").possible == frozenset(["none"])
    if no_steel and (one.supplied == "on-steel" or (one.role == "spacer" and part.level)):
        return 0
    return part.sets if own else part.on_loop


def _used_for(one: Part, device: Record) -> Message:
    own = f"for-{one.role}" in message and (one.role not in _FOR_MAGNET or traits(device).magnetic)
    used_for = message(f"for-{one.role}" if own else "for-any", device=within(device.name))
    return message("not-in-every-set", use=used_for) if one.supplied == "some-sets" else used_for


def _ids(parts: Iterable[AtOpening]) -> tuple[str, ...]:
    return tuple(part.opening.id for part in parts)


def _supplies(unit: ControlUnit, parts: Sequence[AtOpening], spares: Spares) -> Iterator[Item]:
    fitted = [part for part in parts if part.fitted]
    cells, cables = sum(part.cells for part in fitted), sum(part.zones for part in fitted if part.loop)
    joined = sum(part.contacts for part in fitted if part.transmitter)
    if joined:
        yield _piece("consumable", message("joints"), 2 * joined, spares, message("joints.use"))
    in_line = sum(part.zones for part in fitted if part.transmitter or (part.wired and _in_line(unit)))
    if in_line:
        yield _piece("consumable", message("joints-in-line"), in_line, spares, message("joints-in-line.use"))
    if fitted:
        yield _piece("consumable", message("bags"), len(fitted), spares, message("bags.use"))
    if cells:
        yield _piece("consumable", message("date-labels"), cells, spares, message("date-labels.use"))
        yield Item("consumable", message("tape"), 1, 0, "roll", message("tape.use"))
    if cables:
        yield _piece("consumable", message("cable-labels"), 2 * cables, spares, message("cable-labels.use"))


def _in_line(unit: ControlUnit) -> bool:
    """Whether the loops of the panel have a resistor in line; where nobody knows the layout, one is counted."""
    return unit.layout is None or unit.layout in _IN_LINE


def _access(parts: Sequence[AtOpening], house: House) -> Iterator[Item]:
    """Access equipment, where work is too high for a ladder."""
    high = [part for part in parts if part.fitted and (part.opening.height_m or 0.0) > house["ladder-most"]]
    if high:
        yield Item("tool", message("access"), 1, 0, "piece", message("access.use", places=_places(high)))
    overhead = [part for part in parts if part.fitted and takes_platform(part.opening, house)]
    if overhead:
        use = message("platform.use", places=_places(overhead))
        yield Item("tool", message("platform"), 1, 0, "piece", use, openings=_ids(overhead))


def _guards(parts: Sequence[AtOpening], warnings: Iterable[Caution]) -> Iterator[Item]:
    """What guards against the hazards of this job, and what reads the radio where a margin is asked."""
    fitted = [part for part in parts if part.fitted]
    if any(not part.wired for part in fitted):
        yield Item("tool", message("signal-tester"), 1, 0, "piece", message("signal-tester.use"))
    bored = [part for part in fitted if part.new_cable and _masonry(part.opening)]
    if bored:
        use = message("long-bit.use", places=_places(bored))
        yield Item("tool", message("long-bit"), 1, 0, "piece", use, openings=_ids(bored))
    stand = {one.caution: one.about for one in warnings}
    for caution in _GUARDED:
        here = [part for part in fitted if part.opening.id in stand.get(caution, ())]
        if here:
            used_for = message(f"guard-{caution}.use", places=_places(here))
            yield Item("tool", message(f"guard-{caution}"), 1, 0, "set", used_for, openings=_ids(here))


def _masonry(opening: Opening) -> bool:
    """Whether a wall of brick or concrete stands on the way of its cable, as far as the survey counts them."""
    return any(wall.material in _BORED for wall in opening.walls or ())


def _tools(procedures: Iterable[str], library: Library, technicians: int) -> Iterator[Item]:
    """Each tool in the order in which the work first needs it: one of each, and of some one for each technician."""
    ids: dict[str, None] = {}
    for procedure in procedures:
        record = library.find("procedure", procedure)
        ids.update(dict.fromkeys(record.listed("tools") if record else ()))
    for id_ in ids:
        tool = library.find("tool", id_)
        if tool:
            name = tool.name[:1].upper() + tool.name[1:]
            number = technicians if id_ in _EACH else 1
            yield Item("tool", name, number, 0, "piece", plain(tool["summary"]), f"tool/{id_}")


def _places(parts: Sequence[AtOpening]) -> Message:
    """The openings that something is for, by their spoken names."""
    names = [part.spoken for part in parts]
    more = len(names) - _NAMED
    named = listed(names[:_NAMED], "unit")
    return message("places-and-more", names=named, more=more) if more > 0 else message("places", names=named)
