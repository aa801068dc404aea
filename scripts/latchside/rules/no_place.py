"""Somebody says where a device is fixed on each kind of opening that it is for."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.traits import place_on, traits
from latchside.rules.rule import Rule

CODE = "no-place"


def check(library: Library) -> Iterator[Finding]:
    """Of magnets and of transmitters the planner knows the places; each other device says its own."""
    words = library.schemas.words("opening")
    for device in library.of("device"):
        missing = [] if traits(device).by_magnet else [k for k in device["openings"] if place_on(device, k) is None]
        if missing:
            kinds = ", ".join(words[kind].lower() for kind in missing)
            yield device.finding(
                CODE, ("openings",), f"nothing says where a {device.name.lower()} is fixed: {kinds}",
                "place: an entry with these kinds under on", "Add the place, or take the kind out of openings.",
            )  # fmt: skip
        for index, entry in enumerate(device.listed("place")):
            for number, kind in enumerate(entry["on"]):
                if kind not in device["openings"]:
                    yield device.finding(
                        CODE, ("place", index, "on", number), f"a place on {words[kind].lower()}, which is not listed",
                        "a kind under openings", "Add the kind to openings, or take it out here.",
                    )  # fmt: skip


RULE = Rule(CODE, check)
