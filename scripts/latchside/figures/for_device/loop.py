"""The loop of a device: what a meter and an input read in each state, with its resistor and its cable."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.figures.for_device.worked import Figures, Missing, Note, Ratings, Worked
from latchside.figures.rounding import between, say
from latchside.library.traits import Traits
from latchside.messages import listed, messages

message = messages(__name__)

STATES = ("shut", "open", "short", "cut")
LAYOUTS = ("series", "double", "double-across")


def readings(ratings: Ratings, figures: Figures, traits: Traits) -> Iterator[Worked]:
    """A table for each layout that the device may be wired in: both where it hangs on a control unit by cable."""
    if "loop-states" not in figures:
        raise Missing("loop-states")
    states = figures["loop-states"]
    inputs = _inputs(ratings, figures)
    for layout in LAYOUTS if traits.wired else ("series",):  # one resistor for terminals of its own
        given = {**inputs, "layout": layout}
        answer = states.answer(given).outputs
        rows = tuple(
            (message(f"state-{state}.first"), _meter(answer, state), _reads(answer, state)) for state in STATES
        )
        yield Worked(
            f"loop-{layout}", message(f"title-{layout}"), "loop-states", given,
            (message("state"), message("meter"), message("input")), rows,
            _meaning(answer), tuple(_notes(ratings, given)), ("cable-resistance",) if given["cable_ohm"] else (),
        )  # fmt: skip


def _inputs(ratings: Ratings, figures: Figures) -> dict[str, Any]:
    """The smallest resistor the label may name, because the cable counts most there, behind an equal pull-up."""
    end = ratings.least("end-of-line", "ohm")
    supply = next(one.default for one in figures["loop-states"].inputs if one.name == "supply_v")
    return {
        "supply_v": supply,
        "pull_up_ohm": end,
        "end_ohm": end,
        "contact_ohm": end,
        "tolerance_percent": ratings.stated("end-of-line").percent or 0,
        "cable_ohm": _cable(ratings, figures),
    }


def _cable(ratings: Ratings, figures: Figures) -> float:
    if "cable-area" not in ratings or "cable-length" not in ratings or "cable-resistance" not in figures:
        return 0.0
    inputs = {"length_m": ratings.most("cable-length", "m"), "area_mm2": ratings.least("cable-area", "mm2")}
    return float(figures["cable-resistance"].answer(inputs).outputs["loop_ohm"])


def _meter(answer: Mapping[str, Any], state: str) -> str:
    ohm = answer["states"][state]["ohm"]
    if state == "short":
        return message("at-most", resistance=say(ohm, "ohm")) if ohm else say(0, "ohm")
    return message("open-circuit") if ohm is None else say(ohm, "ohm", 4)


def _reads(answer: Mapping[str, Any], state: str) -> str:
    band = answer["states"][state]
    return between(band["low_v"], band["high_v"], "V")


def _meaning(answer: Mapping[str, Any]) -> str:
    groups = [[state for state in group if state in STATES] for group in answer["same_reading"]]
    alike = [message("alike", states=_listed(group)) for group in groups if len(group) > 1]
    gap = say(answer["smallest_gap_v"], "V")
    if not alike:
        return f"{message('all-differ')} {message('four-apart', gap=gap)}"
    return " ".join([*alike, message("others-apart", gap=gap)])


def _listed(states: list[str]) -> str:
    """States at the beginning of a sentence."""
    return listed([message(f"state-{states[0]}.first"), *(message(f"state-{state}") for state in states[1:])])


def _notes(ratings: Ratings, given: Mapping[str, Any]) -> Iterator[Note]:
    yield Note(message("supply", supply=say(given["supply_v"], "V")), "typical")
    if len(ratings.all("end-of-line", "ohm")) > 1:
        yield Note(message("smallest", resistance=say(given["end_ohm"], "ohm")), "typical")
    if given["cable_ohm"]:
        length = say(ratings.most("cable-length", "m"), "m")
        yield Note(message("cable", length=length, resistance=say(given["cable_ohm"], "ohm")), "computed")
    if given["layout"].startswith("double"):
        yield Note(message("equal"), "common practice")
