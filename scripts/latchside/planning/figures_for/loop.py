"""The loop of a wired contact: what a meter reads in each state, and what the input sees.

A reading that rests on a resistor nobody named is shown and judged by nobody: it is not an expected value.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import inf
from typing import Any

from latchside.figures.models.loop_states import Window, smallest_gap, told_apart
from latchside.figures.rounding import between, short
from latchside.messages import messages
from latchside.planning.figures_for import cable as cables
from latchside.planning.figures_for.context import Context
from latchside.planning.figures_for.shown import down, in_words, say, third_digit, up, up_to
from latchside.planning.names import contacts
from latchside.planning.plan import Expected, Line, Verdict

message = messages(__name__)
DOUBLE = ("double", "double-across")
"""Layouts with a second resistor."""
CUT_SHOWS = (*DOUBLE, "parallel")
"""Layouts in which a cut pair reads unlike an open door."""
_STATES = ("shut", "open", "short", "cut")

Band = tuple[float, float | None]
"""Lowest and highest in ohm; None is no limit."""


def loop(context: Context) -> Iterator[Line]:
    """The lines of the loop."""
    if context.device.transmitter:
        yield _of_transmitter(context)
        yield cables.to_transmitter(context)
    elif context.device.wired:
        cable = cables.run(context)
        yield cables.line(context, cable)
        yield _reading(context, cable)
        yield from _window(context, cable)


def _of_transmitter(context: Context) -> Line:
    ratings = context.device.ratings
    shown = in_words(ratings.stated("end-of-line"))
    meaning = message("label", resistance=in_words(ratings.stated("contact-resistance")))
    return Line(message("at-terminals"), shown, "none", meaning, "loop-states", {"layout": "series"})


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
    assumed = []
    if unit.layout is None:
        assumed.append(message("layout-assumed"))
    if unit.end_of_line_ohm is None and unit.layout != "none":
        assumed.append(message("end-assumed", ohm=say(end, "ohm", 4)))
    if two and unit.second_resistor_ohm is None:
        assumed.append(message("second-assumed"))
    return tuple(assumed)


def _reading(context: Context, cable: cables.Cable | None) -> Line:
    found = readings(context, cable)
    sure = {"shut", "open"} <= found.sure
    states = {"shut": up_to(*found.shut, "ohm"), "open": up_to(*found.open, "ohm")}
    shown = message("states" if sure else "states-assumed", **states)
    meaning: str = message("metered", layout=found.layout, short=up_to(None, found.short, "ohm"))
    if _shared(context, found.layout):
        meaning = f"{meaning} {message('shared')}"
    inputs = {
        "layout": found.layout, "end_ohm": found.end, "shut_ohm": list(found.shut), "open_ohm": list(found.open),
        "short_ohm": found.short, **({"contact_ohm": found.second} if found.second else {}),
    }  # fmt: skip
    verdict: Verdict = "none" if sure else "test on site"
    return Line(message("reading"), shown, verdict, meaning, "loop-states", inputs, found.assumed)


def _shared(context: Context, layout: str) -> bool:
    """Whether a second contact may be on the same loop, between its resistors."""
    return layout in DOUBLE and contacts(context.opening) > 1


def _window(context: Context, cable: cables.Cable | None) -> Iterator[Line]:
    """What the input reads, state by state."""
    inputs, states = _windows(context, cable)
    if not states:
        return
    shown = message("voltages", **{one: between(states[one].low, states[one].high, "V") for one in _STATES})
    groups = told_apart(states)
    gap = smallest_gap(states, groups)
    alike = [[one for one in _STATES if one in group] for group in groups]
    meaning = [message("alike", states="-".join(group)) for group in alike if len(group) > 1]
    meaning.append(message("others-apart" if meaning else "apart", gap=say(down(gap, 0.01), "V")))
    meaning.append(message("windows"))
    blind = any({"shut", "open"} <= set(group) for group in groups)
    clear = context.constant("loop-states", "clear-share")["value"] * inputs["supply_v"]
    verdict: Verdict = "poor" if blind else "good" if gap >= clear else "test on site"
    inputs["smallest_gap_v"] = gap
    yield Line(message("input"), shown, verdict, " ".join(meaning), "loop-states", inputs, ())


def _windows(context: Context, cable: cables.Cable | None) -> tuple[dict[str, Any], dict[str, Window]]:
    """What the input is worked from, and its readings by state; no readings where supply, pull-up, layout or resistors
    are not known."""
    unit = context.unit
    found = readings(context, cable)
    if unit.supply_v is None or unit.pull_up_ohm is None or not {"shut", "open"} <= found.sure:
        return {}, {}
    inputs: dict[str, Any] = {
        "supply_v": unit.supply_v, "pull_up_ohm": unit.pull_up_ohm, "layout": found.layout,
        "tolerance_percent": context.device.ratings.stated("end-of-line").percent or 0,
        "cable_ohm": found.short, "contact_shut": "closed",
    }  # fmt: skip
    if found.layout != "none":
        inputs["end_ohm"] = found.end
    if found.second:
        inputs["contact_ohm"] = found.second
    return inputs, _states(context, inputs) or {}


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
        yield from _at_terminals(context)
    elif context.device.wired:
        cable = cables.run(context)
        yield from cables.expected(cable)
        found = readings(context, cable)
        bands: dict[str, tuple[float | None, float | None]] = {
            "shut": found.shut, "open": found.open, "short": (None, found.short),
        }  # fmt: skip
        for state, (low_, high) in bands.items():
            if state in found.sure:
                label = message(f"expected-{state}", layout=found.layout)
                yield Expected(f"loop-{state}", label, "ohm", low_, high, up_to(low_, high, "ohm"))
        if context.unit.layout in CUT_SHOWS:
            low = ratings.least("loop-open", "ohm")
            shown = message("cut-shows", open=up_to(low, None, "ohm"))
            yield Expected("loop-cut", message("expected-cut"), "ohm", low, None, shown)
        yield from _at_input(context, cable)


def _at_terminals(context: Context) -> Iterator[Expected]:
    """What a meter reads at the terminals of a transmitter; the resistor is the one that its label names."""
    ratings = context.device.ratings
    shut = ratings.stated("loop-shut")
    low, high = ratings.floor("loop-shut", "ohm"), ratings.limit("loop-shut", "ohm")
    tolerance = ratings.stated("end-of-line").percent or shut.percent or 0.0
    leads = say(ratings.most("contact-resistance", "ohm"), "ohm")
    by_label = message("of-label", percent=short(tolerance, "%"), leads=leads)
    yield Expected("loop-shut", message("expected-label"), "ohm", low, high, by_label)
    open_, shorted = ratings.least("loop-open", "ohm"), ratings.most("loop-short", "ohm")
    yield Expected("loop-open", message("expected-terminals"), "ohm", open_, None, up_to(open_, None, "ohm"))
    yield Expected("loop-short", message("expected-shorted"), "ohm", None, shorted, up_to(None, shorted, "ohm"))


def _at_input(context: Context, cable: cables.Cable | None) -> Iterator[Expected]:
    """The voltage at the terminals of the input with the door closed and open, where it could be worked.

    It is no limit: the supply is a round figure, and the panel has its own windows.
    """
    states = _windows(context, cable)[1]
    for state in ("shut", "open") if states else ():
        shown = message("about", volts=between(states[state].low, states[state].high, "V"))
        yield Expected(f"input-{state}", message(f"input-{state}"), "V", 0.0, None, shown)
