"""The loop of a wired contact: what a meter reads in each state, and what the input sees.

A reading that rests on a resistor nobody named is shown and judged by nobody: it is not an expected value.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import inf
from typing import Any

from latchside.figures.models.loop_states import Window, smallest_gap, told_apart
from latchside.figures.rounding import between, joined
from latchside.planning.figures_for import cable as cables
from latchside.planning.figures_for.context import Context
from latchside.planning.figures_for.shown import down, in_words, say, third_digit, up, up_to
from latchside.planning.plan import Expected, Line, Verdict

CLEAR = 0.05
"""Share of the supply that two states are apart in a loop that is told well."""
DOUBLE = ("double", "double-across")
"""Layouts with a second resistor."""
_STATES = {"shut": "leaf shut", "open": "leaf open", "short": "pair shorted", "cut": "pair cut"}
_LAYOUTS = {
    "none": "no resistor", "series": "one resistor in series", "parallel": "one resistor across the contact",
    "double": "two resistors, one in series and one across the contact",
    "double-across": "two resistors, one in series with the contact and one across both",
}  # fmt: skip
_CUT = {
    "none": "A cut reads as an open leaf, and a short as a shut one.", "series": "A cut reads as an open leaf.",
    "parallel": "A cut reads open circuit, and a short as a shut leaf.", "double": "A cut reads open circuit.",
    "double-across": "A cut reads open circuit.",
}  # fmt: skip

Band = tuple[float, float | None]
"""Lowest and highest in ohm; None is no limit."""


def loop(context: Context) -> Iterator[Line]:
    """The lines of the loop."""
    if context.device.transmitter:
        yield _of_transmitter(context)
    elif context.device.wired:
        cable = cables.run(context)
        yield cables.line(context, cable)
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


@dataclass(frozen=True)
class Readings:
    """What a meter reads on the free pair in ohm, by state; `sure` are the states that rest on nothing assumed."""

    shut: Band
    open: Band
    short: float
    layout: str
    end: float
    second: float | None
    sure: frozenset[str]
    assumed: tuple[str, ...]


def readings(context: Context, cable: cables.Cable | None) -> Readings:
    """The readings by layout and resistors, with the tolerance of the resistors and the contact with its leads."""
    ratings, unit = context.device.ratings, context.unit
    layout = unit.layout or "series"
    end = unit.end_of_line_ohm or ratings.least("end-of-line", "ohm")
    second = unit.second_resistor_ohm or end
    part = (ratings.stated("end-of-line").percent or 0.0) / 100
    leads = max(ratings.most("contact-resistance", "ohm"), cable.most if cable else 0.0)

    def band(ohm: float) -> Band:
        low, high = ohm * (1 - part), ohm * (1 + part) + leads
        return down(low, third_digit(low)), up(high, third_digit(high))

    closed: Band = (0.0, up(leads, 1.0))
    nothing: Band = (ratings.least("loop-open", "ohm"), None)
    shut, open_ = {
        "none": (closed, nothing), "series": (band(end), nothing), "parallel": (closed, band(end)),
        "double": (band(end), band(end + second)), "double-across": (band(1 / (1 / end + 1 / second)), band(second)),
    }[layout]  # fmt: skip
    two = layout in DOUBLE
    return Readings(
        shut, open_, up(leads, 1.0), layout, end, second if two else None, _sure(context), _assumed(context, end, two)
    )


def _sure(context: Context) -> frozenset[str]:
    """The states whose reading rests on what is known of layout and resistors."""
    unit = context.unit
    end, second = unit.end_of_line_ohm is not None, unit.second_resistor_ohm is not None
    found = {
        None: (False, False), "none": (True, True), "series": (end, True), "parallel": (True, end),
        "double": (end, end and second), "double-across": (end and second, second),
    }[unit.layout]  # fmt: skip
    known = {state for state, known in zip(("shut", "open"), found, strict=True) if known}
    return frozenset({*known, "short"} if unit.layout is not None else known)


def _assumed(context: Context, end: float, two: bool) -> tuple[str, ...]:
    unit = context.unit
    told = []
    if unit.layout is None:
        told.append("The layout is not known and counts as one resistor in series.")
    if unit.end_of_line_ohm is None and unit.layout != "none":
        told.append(f"The resistor is not known and counts as {say(end, 'ohm', 4)}.")
    if two and unit.second_resistor_ohm is None:
        told.append("The second resistor is not known and counts as the same value.")
    return tuple(told)


def _reading(context: Context, cable: cables.Cable | None) -> Line:
    found = readings(context, cable)
    shown = f"shut {up_to(*found.shut, 'ohm')}; open {up_to(*found.open, 'ohm')}"
    sure = {"shut", "open"} <= found.sure
    if not sure:
        shown = f"with what is assumed: {shown}"
    meaning = (
        f"{_LAYOUTS[found.layout].capitalize()}, metered with the pair off its terminals. {_CUT[found.layout]} A short "
        f"reads {up_to(None, found.short, 'ohm')}.{_shared(context, found.layout)}"
    )
    inputs = {
        "layout": found.layout, "end_ohm": found.end, "shut_ohm": list(found.shut), "open_ohm": list(found.open),
        "short_ohm": found.short, **({"contact_ohm": found.second} if found.second else {}),
    }  # fmt: skip
    return Line(
        "Loop reading", shown, "none" if sure else "test on site", meaning, "loop-states", inputs, found.assumed
    )


def _shared(context: Context, layout: str) -> str:
    """What a second contact on the same loop means for its resistors."""
    opening = context.opening
    if layout not in DOUBLE or not (opening.passive_leaf or opening.upper_sash):
        return ""
    return (
        " Where both contacts share this loop, one resistor lies across both, and a cut between them reads as an open "
        "leaf."
    )


def _window(context: Context, cable: cables.Cable | None) -> Iterator[Line]:
    """What the input reads, where its supply and pull-up are known and so are layout and resistors."""
    unit = context.unit
    found = readings(context, cable)
    if unit.supply_v is None or unit.pull_up_ohm is None or not {"shut", "open"} <= found.sure:
        return
    inputs: dict[str, Any] = {
        "supply_v": unit.supply_v, "pull_up_ohm": unit.pull_up_ohm, "layout": found.layout,
        "tolerance_percent": context.device.ratings.stated("end-of-line").percent or 0,
        "cable_ohm": found.short, "contact_shut": "closed",
    }  # fmt: skip
    if found.layout != "none":
        inputs["end_ohm"] = found.end
    if found.second:
        inputs["contact_ohm"] = found.second
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
    meaning = f"{' '.join(said)} The document of the control unit has its own windows, and those win."
    yield Line("Input voltage", shown, verdict, meaning, "loop-states", {**inputs, "smallest_gap_v": gap}, ())


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


_EXPECTED = {"shut": "Loop, leaf shut", "open": "Loop, leaf open", "short": "Loop, shorted at the contact"}


def expected(context: Context) -> Iterator[Expected]:
    """What a meter should read. A reading with a resistor that nobody named is left out."""
    ratings = context.device.ratings
    if context.device.transmitter:
        low = ratings.least("loop-open", "ohm")
        yield Expected("loop-open", "Loop, leaf open", "ohm", low, None, up_to(low, None, "ohm"))
    elif context.device.wired:
        found = readings(context, cables.run(context))
        bands: dict[str, tuple[float | None, float | None]] = {
            "shut": found.shut, "open": found.open, "short": (None, found.short),
        }  # fmt: skip
        for state, label in _EXPECTED.items():
            if state in found.sure:
                low_, high = bands[state]
                layout = f", {_LAYOUTS[found.layout]}"
                yield Expected(f"loop-{state}", f"{label}{layout}", "ohm", low_, high, up_to(low_, high, "ohm"))
