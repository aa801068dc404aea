"""What the first screen of a fault answers: its likeliest causes, each with the check that tells it soonest."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from latchside.library import Library, Record
from latchside.library.quantity import quantity
from latchside.markup import markup
from latchside.messages import listed, messages
from latchside.order.problem import guesses
from latchside.pages.readings import of_devices, shown

message = messages(__name__)

MOST = 3
"""How many causes the first screen names."""
FEW = 2
"""How many figures of different devices stand side by side."""


@dataclass(frozen=True)
class Likely:
    """A cause, the check that tells it soonest, the result that shows it, and the reading to expect when all is well.

    The reading is empty where the check measures nothing.
    """

    cause: Mapping[str, Any]
    check: Mapping[str, Any]
    result: Mapping[str, Any]
    reading: Markup

    @property
    def cautions(self) -> tuple[str, ...]:
        """What to heed before its check."""
        return cautions_of((self.check,))


@dataclass(frozen=True)
class First:
    """What stands in view on the page of a fault, before anything is opened."""

    library: Library
    fault: Record

    @property
    def likeliest(self) -> tuple[Likely, ...]:
        """The likeliest causes."""
        return likeliest(self.library, self.fault)

    @property
    def check_cautions(self) -> tuple[str, ...]:
        """The cautions of the checks that stand behind a fold, but for those in view with a likeliest cause."""
        seen = {id_ for one in self.likeliest for id_ in one.cautions}
        return tuple(id_ for id_ in cautions_of(self.fault["checks"]) if id_ not in seen)

    @property
    def remedy_cautions(self) -> tuple[str, ...]:
        """The cautions of the remedies."""
        return cautions_of(tuple(cause["remedy"] for cause in self.fault["causes"]))


def likeliest(library: Library, fault: Record) -> tuple[Likely, ...]:
    """The causes that are behind the fault most often, the record's order where as often."""
    weights = guesses(library.schemas).weight
    causes = sorted(fault["causes"], key=lambda cause: -weights[cause["frequency"]])[:MOST]
    return tuple(_likely(library, fault, cause) for cause in causes)


def _likely(library: Library, fault: Record, cause: Mapping[str, Any]) -> Likely:
    """The check that leaves the fewest causes beside this one; of several, the shortest."""
    telling = [
        (check, result)
        for check in fault["checks"]
        for result in check["results"]
        if cause["id"] in result.get("leaves", ())
    ]
    check, result = min(telling, key=lambda pair: (len(pair[1]["leaves"]), pair[0]["minutes"]))
    return Likely(cause, check, result, _reading(library, fault, check))


def _reading(library: Library, fault: Record, check: Mapping[str, Any]) -> Markup:
    """What a check should read, in few words: the figures of the devices, or where they are many, the label."""
    expect = check.get("measure", {}).get("expect")
    if expect is None:
        return Markup("")
    if "device_value" not in expect:
        return shown(quantity(expect))
    devices = library.referring("fault", fault.id, "device")
    named = [device for device in devices if device.id in check.get("only", (device.id,))]
    _, figures = of_devices(library, named, expect)
    return Markup(listed(figures, "or")) if 0 < len(figures) <= FEW else markup(message, "on-label")


def cautions_of(parts: tuple[Mapping[str, Any], ...]) -> tuple[str, ...]:
    """The cautions of several checks or remedies, each once."""
    return tuple(dict.fromkeys(id_ for part in parts for id_ in part.get("cautions", ())))
