"""Somebody says where a device is fixed on each kind of opening that it is for."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.traits import place_on, traits
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "no-place"


def check(library: Library) -> Iterator[Finding]:
    """Of magnets and of transmitters the planner knows the places; each other device says its own."""
    for device in library.of("device"):
        missing = [] if traits(device).by_magnet else [k for k in device["openings"] if place_on(device, k) is None]
        if missing:
            problem = message.finding("not-told", device=device.id, kinds=", ".join(missing))
            yield device.finding(CODE, ("openings",), *problem)
        for index, entry in enumerate(device.listed("place")):
            for number, kind in enumerate(entry["on"]):
                if kind not in device["openings"]:
                    problem = message.finding("kind-not-listed", kind=kind)
                    yield device.finding(CODE, ("place", index, "on", number), *problem)


RULE = Rule(CODE, check)
