"""The values of a device do not contradict each other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from latchside.figures.for_device.worked import ends, figures_of
from latchside.figures.rounding import say
from latchside.findings import Finding
from latchside.library import Library, Record
from latchside.library.quantity import quantity
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "values-disagree"
_UNITS: Mapping[str, Mapping[str, float]] = {
    "mm": {"mm": 1, "cm": 10, "m": 1000, "in": 25.4, "ft": 304.8}, "mT": {"mT": 1, "T": 1000},
    "ohm": {"ohm": 1, "kohm": 1e3, "Mohm": 1e6}, "V": {"V": 1, "mV": 1e-3},
    "min": {"s": 1 / 60, "min": 1, "h": 60, "d": 1440},
}  # fmt: skip
"""How many of the first unit each unit of its sort is.

`figures.units` knows them all, through pint, which takes longer to load than a whole check: hence these few by hand.
"""


@dataclass(frozen=True)
class Relation:
    """The least that `more` may be is at least so many times the most that `less` may be, in `unit`.

    Where both go up and down `together`, the tolerance of the second does not count.
    """

    more: str
    less: str
    times: float
    unit: str
    together: bool = False


RELATIONS = (
    Relation("release", "reach", 1, "mm", together=True),
    Relation("operate-field", "release-field", 1, "mT"),
    Relation("reach", "fit-gap", 1.5, "mm"),
    Relation("reach", "reach-on-steel", 1, "mm"),
    Relation("loop-open", "loop-shut", 10, "ohm"),
    Relation("loop-shut", "loop-short", 10, "ohm"),
    Relation("end-of-line", "contact-resistance", 10, "ohm"),
    Relation("cell-voltage", "cell-low", 1, "V"),
    Relation("missed-window", "check-in", 3, "min"),
)
"""What holds of every device that states both: common practice."""


def check(library: Library) -> Iterator[Finding]:
    """Each relation holds for each device that states both of its values."""
    for device in library.of("device"):
        for relation in RELATIONS:
            if {relation.more, relation.less} <= device["values"].keys():
                yield from _held(device, relation)


def _held(device: Record, relation: Relation) -> Iterator[Finding]:
    more, less = (quantity(device["values"][name]) for name in (relation.more, relation.less))
    factors = _UNITS[relation.unit]
    if not {more.unit, less.unit} <= factors.keys():
        return  # a unit of another sort is a finding of its own
    low, high = ends(more)[0], max(figures_of(less)) if relation.together else ends(less)[1]
    low, high = low * factors[more.unit], high * factors[less.unit]
    if low < relation.times * high or (relation.times == 1 and low == high):
        problem = message.finding(
            "disagree" if relation.times == 1 else "disagree-times",
            more=relation.more,
            least=say(low, relation.unit),
            less=relation.less,
            most=say(high, relation.unit),
            times=f"{relation.times:g}",
            why=message(f"why-{relation.more}-{relation.less}"),
        )
        yield device.finding(CODE, ("values", relation.more), *problem)


RULE = Rule(CODE, check)
