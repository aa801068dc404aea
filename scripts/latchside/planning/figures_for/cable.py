"""The cable of a loop: what its conductors add, and whether the loop still reads what it should with them.

No length is too long by itself. A run fails where its conductors take the reading of the loop out of the band that
counts as normal: that depends on the run, the size of its conductors and the resistors of the loop.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from latchside.figures.rounding import short
from latchside.messages import messages
from latchside.planning.figures_for.context import NORTH_AMERICA, Context
from latchside.planning.figures_for.shown import down, say, up, up_to
from latchside.planning.plan import Expected, Line, Verdict
from latchside.surveys.survey import ControlUnit

message = messages(__name__)
CABLE_SPARE_M = 2.0
TO_TRANSMITTER_M = 3.0
LOOP_BAND = 10.0
"""Per cent of a resistor by which a reading may be off and still count as normal."""
PLAIN_LEADS = 100.0
"""Ohm that the leads of a loop may have where it reads near zero while shut."""
LEAST_END = 1000.0
"""The smallest of the usual end-of-line resistors in ohm: it allows the leads the least."""
THIN = 1.16
"""Most that a sound cable reads above ideal tinned copper: so the highest that IEC 60228 allows stays within it."""
COLD = 0.85
"""Least that a sound cable reads of ideal copper at room temperature: some 0.4 % less for each degree of frost. A pair
that is joined half-way reads half."""
NEAR_ZERO = ("none", "parallel")
"""Layouts that read near zero while shut, with a contact that is closed then."""


@dataclass(frozen=True)
class Cable:
    """A run: its length with spare in m, what it is, and both conductors in ohm, ideal and at the most."""

    length: float
    size: Mapping[str, float]
    least: float
    most: float
    assumed: tuple[str, ...]


@dataclass(frozen=True)
class Room:
    """What the leads may add in ohm, the sentence that says so and why, and whether it rests on what is known."""

    ohm: float
    sentence: str
    sure: bool


def run(context: Context) -> Cable | None:
    """The run; None where nobody measured it or its size is out of range."""
    length = context.opening.cable_length_m
    if length is None or not length:
        return None
    size, assumed = _size(context)
    whole = up(length, 0.1) if context.opening.cable else up(length + _spare(context), 1.0)
    inputs = {"length_m": whole, **size}
    ideal = context.answer("cable-resistance", inputs)
    tinned = context.answer("cable-resistance", {**inputs, "conductor": "tinned"})
    if ideal is None or tinned is None:
        return None
    return Cable(whole, size, float(ideal["loop_ohm"]), THIN * float(tinned["loop_ohm"]), assumed)


def line(context: Context, cable: Cable | None) -> Line:
    """The line of the cable in the plan."""
    size, assumed = _size(context)
    room = _room(context)
    most = _longest(context, size, room)
    limit = room.sentence if most is None else f"{room.sentence} {message('longest', length=say(most, 'm'))}"
    inputs: dict[str, Any] = {**size, "longest_m": most, "leads_ohm": room.ohm}
    if cable is None:
        meaning = f"{message('not-measured')} {limit}"
        shown = message("not-worked")
        return Line(message("name"), shown, "test on site", meaning, "cable-resistance", inputs, assumed)
    inputs |= {"length_m": cable.length, "loop_ohm": cable.least, "most_ohm": cable.most}
    ohm = up_to(down(cable.least, 0.1), up(cable.most, 0.1), "ohm")
    shown = message("run", length=say(cable.length, "m", 4), ohm=ohm)
    verdict, advice = _judged(context, cable, room)
    meaning = f"{advice} {limit}" if advice else limit
    return Line(message("name"), shown, verdict, meaning, "cable-resistance", inputs, cable.assumed)


def expected(cable: Cable | None) -> Iterator[Expected]:
    """What both conductors read, their far ends joined, where run and size are known."""
    if cable is not None and not cable.assumed:
        least, most = down(COLD * cable.least, 0.1), up(cable.most, 0.1)
        yield Expected("cable-ohm", message("expected"), "ohm", least, most, up_to(least, most, "ohm"))


def to_transmitter(context: Context) -> Line:
    """The cable between a contact and the terminals of a transmitter, no longer than its label allows.

    A cable that ends at the opening is the loop, and so is that of a contact that stays; a new one is as short as the
    place of the transmitter makes it.
    """
    opening, longest = context.opening, context.device.ratings.most("cable-length", "m")
    size, assumed = _size(context)
    length = opening.cable_length_m if opening.cable else None
    existing = bool(opening.cable or opening.old_contact)
    inputs: dict[str, Any] = {**size, "longest_m": longest, "existing": existing}
    limit = say(longest, "m")
    if not length:
        verdict: Verdict = "test on site" if existing else "none"
        planned = say(min(context.rule("transmitter-cable", TO_TRANSMITTER_M), longest), "m")
        new = message("loop-run", planned=planned, longest=limit)
        whole, meaning = message("loop-there", longest=limit) if existing else new, message("loop-at-most")
        return Line(message("loop-name"), whole, verdict, meaning, "cable-resistance", inputs, assumed)
    shown, inputs = say(length, "m"), {**inputs, "length_m": length}
    if length <= longest:
        meaning = message("loop-fits", longest=limit)
        return Line(message("loop-name"), shown, "test on site", meaning, "cable-resistance", inputs, assumed)
    if not opening.old_contact:
        part, meaning = message("loop-part", longest=limit, length=shown), message("loop-along", longest=limit)
        return Line(message("loop-name"), part, "test on site", meaning, "cable-resistance", inputs, assumed)
    meaning, action = message("loop-too-long", longest=limit), message("loop-shorter")
    return Line(message("loop-name"), shown, "poor", meaning, "cable-resistance", inputs, assumed, action)


def _judged(context: Context, cable: Cable, room: Room) -> tuple[Verdict, str]:
    """The verdict, and what to do about it; nothing where it is good."""
    if cable.most <= room.ohm:
        if context.opening.cable:
            return "test on site", message("existing")
        return "good", ""
    if not room.sure:
        return "test on site", message("not-known")
    if cable.least <= room.ohm:
        return "test on site", message("at-the-limit")
    return "poor", _instead(context, cable, room)


def _instead(context: Context, cable: Cable, room: Room) -> str:
    """What to order in place of it."""
    square = context.answer("cable-resistance", {"length_m": cable.length, "area_mm2": 1.0, "conductor": "tinned"})
    if square is None:
        return message("too-much")
    return message("too-thin", area=say(up(THIN * float(square["loop_ohm"]) / room.ohm, 0.1), "mm2"))


def _room(context: Context) -> Room:
    """How much the leads may add before the reading leaves the band, less the tolerance of the resistors."""
    unit = context.unit
    plain = context.rule("plain-leads", PLAIN_LEADS)
    if unit.layout == "none":
        return Room(plain, message("room-none", ohm=say(plain, "ohm")), True)
    percent = context.device.ratings.stated("end-of-line").percent or 0.0
    share = max(context.rule("loop-band", LOOP_BAND) - percent, 0.0)
    end, sure = _smallest(unit)
    ohm = end * share / 100
    if unit.layout == "parallel" and plain < ohm:
        return Room(plain, message("room-parallel", ohm=say(plain, "ohm")), sure)
    values = {"ohm": say(ohm, "ohm"), "share": short(share, "%"), "end": say(end, "ohm", 4)}
    return Room(ohm, message("room-band" if sure else "room-usual", **values), sure)


def _smallest(unit: ControlUnit) -> tuple[float, bool]:
    """The smallest good reading of the loop in ohm that has a resistor in it, and whether it is known."""
    end, second = unit.end_of_line_ohm, unit.second_resistor_ohm
    if unit.layout is None or end is None or (unit.layout == "double-across" and second is None):
        return LEAST_END / 2 if unit.layout == "double-across" else LEAST_END, False
    return (end * second / (end + second) if unit.layout == "double-across" and second else end), True


def _longest(context: Context, size: Mapping[str, float], room: Room) -> float | None:
    """The longest run in m of this cable whose conductors stay within the room; None where its size is out of range."""
    kilometre = context.answer("cable-resistance", {"length_m": 1000.0, "conductor": "tinned", **size})
    return None if kilometre is None else down(room.ohm / (THIN * float(kilometre["loop_ohm"]) / 1000), 1.0)


def _size(context: Context) -> tuple[Mapping[str, float], tuple[str, ...]]:
    opening = context.opening
    if opening.cable_awg is not None:
        return {"awg": opening.cable_awg}, ()
    if opening.cable_area_mm2 is not None:
        return {"area_mm2": opening.cable_area_mm2}, ()
    thin = context.device.ratings.least("cable-area", "mm2")
    if not opening.cable and context.region in NORTH_AMERICA:
        return {"awg": 22}, (message("usual-gauge"),)
    size = "size-existing" if opening.cable else "size-new"
    return {"area_mm2": thin}, (message(size, area=short(thin, "mm2")),)


def _spare(context: Context) -> float:
    own = context.survey.rules.cable_spare_m
    return context.rule("cable-spare", CABLE_SPARE_M) if own is None else own
