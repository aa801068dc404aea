"""The loop of a wired contact: what its cable adds, what a meter reads in each state, and what the input sees.

A reading that rests on a resistor nobody named is shown and judged by nobody: it is not an expected value.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import inf
from typing import Any

from latchside.figures.models.loop_states import Window, smallest_gap, told_apart
from latchside.figures.rounding import between, joined, short
from latchside.jobs.figures_for.context import NORTH_AMERICA, Context
from latchside.jobs.figures_for.shown import down, in_words, say, up, up_to
from latchside.jobs.plan import Expected, Line, Verdict

CABLE_SPARE_M = 2.0
THIN = 1.16
"""Most that a sound cable reads above ideal tinned copper: so the highest that IEC 60228 allows stays within it."""
CLEAR = 0.05
"""Share of the supply that two states are apart in a loop that is told well."""
_STATES = {"shut": "leaf shut", "open": "leaf open", "short": "pair shorted", "cut": "pair cut"}
_LAYOUTS = {"none": "no resistor", "series": "one resistor in series", "parallel": "one resistor across the contact",
            "double": "two resistors"}  # fmt: skip


@dataclass(frozen=True)
class Cable:
    """A run: its length with spare in m, what it is, and both conductors in ohm, ideal and at the most."""

    length: float
    size: Mapping[str, float]
    least: float
    most: float
    assumed: tuple[str, ...]


def loop(context: Context) -> Iterator[Line]:
    """The lines of the loop."""
    if context.device.transmitter:
        yield _of_transmitter(context)
    elif context.device.wired:
        cable = _cable(context)
        yield _cable_line(context, cable)
        yield _reading(context, cable)
        yield from _window(context, cable)


def _of_transmitter(context: Context) -> Line:
    ratings = context.device.ratings
    longest = say(ratings.most("cable-length", "m"), "m")
    shown = in_words(ratings.stated("end-of-line"))
    meaning = (
        f"The label of the transmitter names one of these, or a plain loop. At most {longest} to the farthest contact, "
        f"which with its cable reads {in_words(ratings.stated('contact-resistance'))} shut."
    )
    return Line("Loop at the terminals", shown, "none", meaning, "loop-states", {"layout": "series"})


def _size(context: Context) -> tuple[Mapping[str, float], tuple[str, ...]]:
    opening = context.opening
    if opening.cable_awg is not None:
        return {"awg": opening.cable_awg}, ()
    if opening.cable_area_mm2 is not None:
        return {"area_mm2": opening.cable_area_mm2}, ()
    thin = context.device.ratings.least("cable-area", "mm2")
    if not opening.cable and context.region in NORTH_AMERICA:
        return {"awg": 22}, ("A new cable of the usual gauge there.",)
    what = "The existing cable" if opening.cable else "A new cable"
    return {"area_mm2": thin}, (f"{what} counts as {short(thin, 'mm2')}: its size is not in the survey.",)


def _cable(context: Context) -> Cable | None:
    """The run; None where nobody measured it or its size is out of range."""
    length = context.opening.cable_length_m
    if length is None or not length:
        return None
    spare = 0.0 if context.opening.cable else _spare(context)
    size, assumed = _size(context)
    whole = up(length + spare, 1.0)
    inputs = {"length_m": whole, **size}
    ideal = context.answer("cable-resistance", inputs)
    tinned = context.answer("cable-resistance", {**inputs, "conductor": "tinned"})
    if ideal is None or tinned is None:
        return None
    return Cable(whole, size, float(ideal["loop_ohm"]), THIN * float(tinned["loop_ohm"]), assumed)


def _spare(context: Context) -> float:
    own = context.survey.rules.cable_spare_m
    return context.rule("cable-spare", CABLE_SPARE_M) if own is None else own


def longest(context: Context, size: Mapping[str, float]) -> float:
    """The longest cable in m: that of the label, or that which alone fills the limit of the contact with its leads."""
    ratings = context.device.ratings
    label = ratings.most("cable-length", "m")
    kilometre = context.answer("cable-resistance", {"length_m": 1000.0, "conductor": "tinned", **size})
    if kilometre is None:
        return label
    ohm = ratings.most("contact-resistance", "ohm")
    return down(min(label, ohm / (THIN * float(kilometre["loop_ohm"]) / 1000)), 1.0)


def _cable_line(context: Context, cable: Cable | None) -> Line:
    size, assumed = _size(context)
    most = longest(context, size)
    limit = f"The longest that the label allows with this cable is {say(most, 'm')}."
    inputs: dict[str, Any] = {**size, "longest_m": most}
    if cable is None:
        meaning = f"Its length was not measured, or its size is out of range, and no resistance is worked. {limit}"
        return Line("Cable", "not worked", "test on site", meaning, "cable-resistance", inputs, assumed)
    inputs |= {"length_m": cable.length, "loop_ohm": cable.least, "most_ohm": cable.most}
    run = say(cable.length, "m", 4)
    shown = f"{run}, both conductors {up_to(down(cable.least, 0.1), up(cable.most, 0.1), 'ohm')}"
    if cable.length > most:
        verdict: Verdict = "poor"
        meaning = f"Longer than allowed. {limit} A transmitter at the opening, or a nearer input, is chosen."
    elif context.opening.cable:
        verdict = "test on site"
        meaning = f"The existing cable is metered before it is trusted. {limit}"
    else:
        verdict, meaning = "good", limit
    return Line("Cable", shown, verdict, meaning, "cable-resistance", inputs, cable.assumed)


@dataclass(frozen=True)
class Readings:
    """What a meter reads on the free pair in ohm, by state, lowest and highest; None is no limit."""

    shut: tuple[float, float | None]
    open: tuple[float, float | None]
    short: float
    layout: str
    end: float
    assumed: tuple[str, ...]


def readings(context: Context, cable: Cable | None) -> Readings:
    """The readings by layout and resistor, with the tolerance of the resistor and the contact with its leads."""
    ratings, unit = context.device.ratings, context.unit
    assumed = []
    end, layout = unit.end_of_line_ohm, unit.layout
    if layout is None:
        layout = "series"
        assumed.append("The layout is not known and counts as one resistor in series.")
    if end is None:
        end = ratings.least("end-of-line", "ohm")
        if layout != "none":
            assumed.append(f"The resistor is not known and counts as {say(end, 'ohm', 4)}.")
    part = (ratings.stated("end-of-line").percent or 0.0) / 100
    leads = max(ratings.most("contact-resistance", "ohm"), cable.most if cable else 0.0)

    def band(ohm: float) -> tuple[float, float | None]:
        return down(ohm * (1 - part), 1.0), up(ohm * (1 + part) + leads, 1.0)

    closed, nothing = (0.0, up(leads, 1.0)), (ratings.least("loop-open", "ohm"), None)
    shut, open_ = {
        "none": (closed, nothing), "series": (band(end), nothing), "parallel": (closed, band(end)),
    }.get(layout, (band(end), band(2 * end)))  # fmt: skip
    if layout == "double":
        assumed.append("Both resistors have the same value.")
    return Readings(shut, open_, up(leads, 1.0), layout, end, tuple(assumed))


def _sure(context: Context) -> bool:
    unit = context.unit
    return unit.layout is not None and (unit.layout == "none" or unit.end_of_line_ohm is not None)


def _reading(context: Context, cable: Cable | None) -> Line:
    found = readings(context, cable)
    shown = f"shut {up_to(*found.shut, 'ohm')}; open {up_to(*found.open, 'ohm')}"
    if not _sure(context):
        shown = f"with what is assumed: {shown}"
    meaning = (
        f"{_LAYOUTS[found.layout].capitalize()}, metered with the pair off its terminals. A short reads "
        f"{up_to(None, found.short, 'ohm')}."
    )
    inputs = {
        "layout": found.layout, "end_ohm": found.end, "shut_ohm": list(found.shut), "open_ohm": list(found.open),
        "short_ohm": found.short,
    }  # fmt: skip
    verdict: Verdict = "none" if _sure(context) else "test on site"
    return Line("Loop reading", shown, verdict, meaning, "loop-states", inputs, found.assumed)


def _window(context: Context, cable: Cable | None) -> Iterator[Line]:
    """What the input reads, where its supply and pull-up are known and so are layout and resistor."""
    unit = context.unit
    if unit.supply_v is None or unit.pull_up_ohm is None or not _sure(context):
        return
    found = readings(context, cable)
    inputs: dict[str, Any] = {
        "supply_v": unit.supply_v, "pull_up_ohm": unit.pull_up_ohm, "layout": found.layout,
        "tolerance_percent": context.device.ratings.stated("end-of-line").percent or 0,
        "cable_ohm": found.short, "contact_shut": "closed",
    }  # fmt: skip
    if found.layout != "none":
        inputs["end_ohm"] = found.end
    if found.layout == "double":
        inputs["contact_ohm"] = found.end
    states = _states(context, inputs)
    if states is None:
        return
    shown = "; ".join(f"{said} {between(states[one].low, states[one].high, 'V')}" for one, said in _STATES.items())
    groups = told_apart(states)
    gap = smallest_gap(states, groups)
    alike = [[_STATES[one] for one in group if one in _STATES] for group in groups]
    said = [f"{joined(group).capitalize()} read alike." for group in alike if len(group) > 1]
    others = "The others" if said else "All four"
    said.append(f"{others} stand at least {say(down(gap, 0.01), 'V')} apart.")
    blind = any({"shut", "open"} <= set(group) for group in groups)
    verdict: Verdict = "poor" if blind else "good" if gap >= CLEAR * unit.supply_v else "test on site"
    assumed = ("Both resistors have the same value.",) if found.layout == "double" else ()
    meaning = f"{' '.join(said)} The document of the control unit has its own windows, and those win."
    yield Line("Input voltage", shown, verdict, meaning, "loop-states", {**inputs, "smallest_gap_v": gap}, assumed)


def _states(context: Context, inputs: Mapping[str, Any]) -> dict[str, Window] | None:
    """The readings by state over all tolerances, from no resistance of contact and leads to the most."""
    ends = [context.answer("loop-states", {**inputs, "cable_ohm": ohm}) for ohm in (0.0, inputs["cable_ohm"])]
    bare, full = (None if end is None else end["states"] for end in ends)
    if bare is None or full is None:
        return None
    return {
        state: Window(
            min(bare[state]["low_v"], full[state]["low_v"]), full[state]["typical_v"],
            max(bare[state]["high_v"], full[state]["high_v"]), full[state]["ohm"] or inf,
        )
        for state in full
    }  # fmt: skip


def expected(context: Context) -> Iterator[Expected]:
    """What a meter should read. A reading with a resistor that nobody named is left out."""
    ratings = context.device.ratings
    if context.device.transmitter:
        low = ratings.least("loop-open", "ohm")
        yield Expected("loop-open", "Loop, leaf open", "ohm", low, None, up_to(low, None, "ohm"))
    elif context.device.wired and _sure(context):
        found = readings(context, _cable(context))
        for name, label, (low_, high) in (
            ("loop-shut", "Loop, leaf shut", found.shut),
            ("loop-open", "Loop, leaf open", found.open),
            ("loop-short", "Loop, shorted at the contact", (None, found.short)),
        ):
            yield Expected(name, label, "ohm", low_, high, up_to(low_, high, "ohm"))
