"""The values of a device do not contradict each other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from latchside.figures.for_device.worked import ends, figures_of
from latchside.figures.rounding import say
from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.quantity import quantity
from latchside.rules.rule import Rule

CODE = "values-disagree"
_UNITS: Mapping[str, Mapping[str, float]] = {
    "mm": {"mm": 1, "cm": 10, "m": 1000, "in": 25.4, "ft": 304.8}, "mT": {"mT": 1, "T": 1000},
    "ohm": {"ohm": 1, "kohm": 1e3, "Mohm": 1e6}, "V": {"V": 1, "mV": 1e-3},
    "min": {"s": 1 / 60, "min": 1, "h": 60, "d": 1440},
}  # fmt: skip
"""How many of a unit go into each other of its sort. The units of figures take too long to load for a check."""


@dataclass(frozen=True)
class Relation:
    """The least that `more` may be is at least so many times the most that `less` may be, in `unit`.

    Where both go up and down `together`, the tolerance of the second does not count.
    """

    more: str
    less: str
    times: float
    unit: str
    why: str
    together: bool = False


RELATIONS = (
    Relation("release", "reach", 1, "mm", "a closed reed lets go farther away than it closes", together=True),
    Relation("operate-field", "release-field", 1, "mT", "a closed reed holds at less field than closes it"),
    Relation("reach", "fit-gap", 1.5, "mm", "sag, season and play take a part of the reach"),
    Relation("reach", "reach-on-steel", 1, "mm", "steel takes reach away"),
    Relation("loop-open", "loop-shut", 10, "ohm", "an open loop is told from a closed one"),
    Relation("loop-shut", "loop-short", 10, "ohm", "a short is told from the resistor"),
    Relation("end-of-line", "contact-resistance", 10, "ohm", "the leads are small beside the resistor"),
    Relation("cell-voltage", "cell-low", 1, "V", "a battery is reported low below its voltage"),
    Relation("missed-window", "check-in", 3, "min", "one lost check-in is no trouble"),
)
"""What holds of every device that states both: common practice."""


def check(library: Library) -> Iterator[Finding]:
    """Each relation holds for each device that states both of its values."""
    for device in library.of("device"):
        for relation in RELATIONS:
            if {relation.more, relation.less} <= device["values"].keys():
                yield from _held(device, relation)


def _held(device: Record, of: Relation) -> Iterator[Finding]:
    more, less = (quantity(device["values"][name]) for name in (of.more, of.less))
    if not {more.unit, less.unit} <= _UNITS[of.unit].keys():
        return  # a unit of another sort is a finding of its own
    low, high = ends(more)[0], max(figures_of(less)) if of.together else ends(less)[1]
    low, high = low * _UNITS[of.unit][more.unit], high * _UNITS[of.unit][less.unit]
    if low < of.times * high or (of.times == 1 and low == high):
        than = "more than" if of.times == 1 else f"at least {of.times:g} times"
        yield device.finding(
            CODE, ("values", of.more), f"{of.more} down to {say(low, of.unit)}, {of.less} up to {say(high, of.unit)}",
            f"{of.more} {than} {of.less}: {of.why}", "Correct the one that is wrong.",
        )  # fmt: skip


RULE = Rule(CODE, check)
