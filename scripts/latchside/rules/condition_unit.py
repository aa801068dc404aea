"""The limits of a condition can be held against the field they limit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding, one_of
from latchside.library import Library, Record
from latchside.library.walk import Path, mappings_with
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "condition-unit"
ROOM = "trip-room"
"""A field that is held against the farthest travel of the magnet, kind of opening by kind."""


def check(library: Library) -> Iterator[Finding]:
    """A limit is of a field that holds a figure, in a fitting unit, and the value it names is one of the device."""
    figures = library.schemas.dimensions("opening-field")
    for device in library.of("device"):
        for path, test in mappings_with(frozenset({"field"}), {name: device[name] for name in ("suits", "avoid")}):
            for side in ("above", "below"):
                if side not in test:
                    continue
                if test["field"] == ROOM and not (side == "below" and test[side].get("limit") == "most"):
                    yield device.finding(CODE, (*path, side), *message.finding("room-limit", field=ROOM))
                elif test["field"] not in figures:
                    problem = message.finding("limit-of-a-word", field=test["field"], figures=one_of(figures))
                    yield device.finding(CODE, (*path, "field"), *problem)
                else:
                    yield from _bound(library, device, (*path, side), test[side], figures[test["field"]])


def _bound(library: Library, device: Record, path: Path, bound: Mapping[str, Any], dimension: str) -> Iterator[Finding]:
    dimension_of = library.schemas.dimensions("unit")
    fitting = ", ".join(unit for unit, found in dimension_of.items() if found == dimension)
    if "unit" in bound:
        if dimension_of.get(bound["unit"]) != dimension:
            problem = message.finding("wrong-unit", unit=bound["unit"], dimension=dimension, fitting=fitting)
            yield device.finding(CODE, (*path, "unit"), *problem)
        yield from _alone(device, path, bound)
    for name in ("of", "less"):
        if name in bound:
            yield from _value(device, (*path, name), bound[name], dimension_of, dimension)


def _alone(device: Record, path: Path, bound: Mapping[str, Any]) -> Iterator[Finding]:
    for extra in ("less", "limit", "share"):
        if extra in bound:
            yield device.finding(CODE, (*path, extra), *message.finding("beside-a-figure", key=extra))


def _value(device: Record, path: Path, name: str, dimension_of: Mapping[str, str], dimension: str) -> Iterator[Finding]:
    stated = device["values"].get(name)
    if stated is None:
        problem = message.finding("value-not-stated", value=name, device=device.id, values=one_of(device["values"]))
        yield device.finding(CODE, path, *problem)
    elif dimension_of.get(stated["unit"]) != dimension:
        problem = message.finding("value-of-another-unit", value=name, unit=stated["unit"], dimension=dimension)
        yield device.finding(CODE, path, *problem)


RULE = Rule(CODE, check)
