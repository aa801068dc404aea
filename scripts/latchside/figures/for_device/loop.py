"""The loop of a device: what a meter and an input read in each state, with its resistor and its cable."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.figures.for_device.worked import Figures, Missing, Note, Ratings, Worked
from latchside.figures.rounding import between, joined, say
from latchside.library.traits import Traits

STATES = {"shut": "leaf shut", "open": "leaf open", "short": "pair shorted", "cut": "pair cut"}
LAYOUTS = {
    "series": "one resistor in series",
    "double": "one resistor in series and one across the contact",
    "double-across": "one resistor in series with the contact and one across both",
}


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
            (words.capitalize(), _meter(answer, state), _reads(answer, state)) for state, words in STATES.items()
        )
        yield Worked(
            f"loop-{layout}", f"Readings of the loop, {LAYOUTS[layout]}", "loop-states", given,
            ("State", "Meter on the disconnected pair", "Input reads, with all tolerances"), rows,
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
        return f"at most {say(ohm, 'ohm')}" if ohm else say(0, "ohm")
    return "open circuit" if ohm is None else say(ohm, "ohm", 4)


def _reads(answer: Mapping[str, Any], state: str) -> str:
    band = answer["states"][state]
    return between(band["low_v"], band["high_v"], "V")


def _meaning(answer: Mapping[str, Any]) -> str:
    groups = [[STATES[state] for state in group if state in STATES] for group in answer["same_reading"]]
    alike = [
        f"{joined(group).capitalize()} read the same, and no input can tell them apart."
        for group in groups
        if len(group) > 1
    ]
    gap = f"The other states stand at least {say(answer['smallest_gap_v'], 'V')} apart."
    return " ".join([*(alike or ["All four states read differently."]), gap if alike else gap.replace("other", "four")])


def _notes(ratings: Ratings, given: Mapping[str, Any]) -> Iterator[Note]:
    yield Note(
        f"Supply {say(given['supply_v'], 'V')} over a pull-up as large as the end-of-line resistor. The document of "
        "the receiving equipment states both.", "typical",
    )  # fmt: skip
    if len(ratings.all("end-of-line", "ohm")) > 1:
        yield Note(
            f"Worked for {say(given['end_ohm'], 'ohm')}, the smallest that the label may name: with a larger one and "
            "an equal pull-up the voltages are the same but for the cable.", "typical",
        )  # fmt: skip
    if given["cable_ohm"]:
        length = say(ratings.most("cable-length", "m"), "m")
        yield Note(f"Cable of {length}, both conductors {say(given['cable_ohm'], 'ohm')}.", "computed")
    if given["layout"].startswith("double"):
        yield Note("Both resistors have the same value.", "common practice")
