"""The figures of a device that its page opens with, chosen by what the device is: those that a technician fits by."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from latchside.figures.brief import Brief, brief
from latchside.library import Library, Record
from latchside.library.quantity import quantity
from latchside.library.traits import Traits, traits
from latchside.messages import messages

message = messages(__name__)

MOST = 6
"""So many fill two rows on a phone and one at a desk."""

_LEADING: dict[str, Callable[[Traits], bool]] = {
    "reach": lambda one: one.magnetic,
    "release": lambda one: one.magnetic,
    "fit-gap": lambda one: one.magnetic,
    "reach-on-steel": lambda one: one.magnetic,
    "hole-diameter": lambda one: one.drilled,
    "loop-shut": lambda one: one.on_loop,
    "loop-open": lambda one: one.on_loop,
    "cable-length": lambda one: one.takes_loop,
    "cell-life": lambda one: one.has("cell"),
    "check-in": lambda one: not one.wired,
    "radio-margin": lambda one: not one.wired,
    "break-travel": lambda one: True,
}
"""Names of values, the first that matter first, each with the devices that are known by it."""


@dataclass(frozen=True)
class Leading:
    """A figure to open with: the value it is, what it is called in short, and the status that its record states."""

    name: str
    label: str
    shown: Brief
    status: str


def leading(device: Record) -> tuple[Leading, ...]:
    """The figures that the page of a device opens with; fewer where its record states fewer."""
    return tuple(_leading(device))[:MOST]


def _leading(device: Record) -> Iterator[Leading]:
    for name in order(device):
        stated = quantity(device["values"][name])
        yield Leading(name, label(name), brief(stated), stated.status)


def order(device: Record) -> tuple[str, ...]:
    """The values that a device is known by, the first that matter first."""
    is_ = traits(device)
    return tuple(name for name, known_by in _LEADING.items() if name in device["values"] and known_by(is_))


def label(name: str) -> str:
    """What a leading value is called in short; empty for any other."""
    return message(name) if name in _LEADING else ""


def own_cautions(library: Library, device: Record) -> tuple[str, ...]:
    """The cautions that what the device is asks for, and those of danger: the lines that its page opens with."""
    is_ = traits(device)
    listed = [one for id_ in device.listed("cautions") if (one := library.find("caution", id_))]
    return tuple(one.id for one in listed if one["level"] == "danger" or _asked(one, is_))


def _asked(caution: Record, is_: Traits) -> bool:
    needed = caution.get("needed")
    return isinstance(needed, Mapping) and is_.fit(needed)
