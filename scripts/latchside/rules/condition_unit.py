"""The limits of a condition can be held against the field they limit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from latchside.findings import Finding, one_of
from latchside.library import Library, Record
from latchside.library.walk import Path, mappings_with
from latchside.rules.rule import Rule

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
                    yield device.finding(
                        CODE, (*path, side), f"a limit for {ROOM} other than the most of a value of the device",
                        "below, with of: a travel of the magnet, and limit: most",
                        "Write below: {of: break-travel, limit: most}.",
                    )  # fmt: skip
                elif test["field"] not in figures:
                    yield device.finding(
                        CODE, (*path, "field"), f"a limit for {test['field']}, which holds a word",
                        one_of(figures), "Name its words under is, or ask about a field that holds a figure.",
                    )  # fmt: skip
                else:
                    yield from _bound(library, device, (*path, side), test[side], figures[test["field"]])


def _bound(library: Library, device: Record, path: Path, bound: Mapping[str, Any], dimension: str) -> Iterator[Finding]:
    dimension_of = library.schemas.dimensions("unit")
    fitting = ", ".join(unit for unit, found in dimension_of.items() if found == dimension)
    if "unit" in bound:
        if dimension_of.get(bound["unit"]) != dimension:
            yield device.finding(
                CODE, (*path, "unit"), f"{bound['unit']} as the unit of a limit", f"a unit of {dimension}: {fitting}",
                "Correct the unit.",
            )  # fmt: skip
        yield from _alone(device, path, bound)
    for name in ("of", "less"):
        if name in bound:
            yield from _value(device, (*path, name), bound[name], dimension_of, dimension)


def _alone(device: Record, path: Path, bound: Mapping[str, Any]) -> Iterator[Finding]:
    for extra in ("less", "limit", "share"):
        if extra in bound:
            yield device.finding(
                CODE, (*path, extra), f"{extra} beside a figure of its own", "it only beside of",
                "Write the figure as it is meant, or name a value of the device under of.",
            )  # fmt: skip


def _value(device: Record, path: Path, name: str, dimension_of: Mapping[str, str], dimension: str) -> Iterator[Finding]:
    stated = device["values"].get(name)
    if stated is None:
        yield device.finding(
            CODE, path, f"{name}, which {device.id} does not state", one_of(device["values"]),
            "State it under values, or name another one.",
        )  # fmt: skip
    elif dimension_of.get(stated["unit"]) != dimension:
        yield device.finding(
            CODE, path, f"{name} in {stated['unit']}", f"a value with a unit of {dimension}", "Name another value.",
        )  # fmt: skip


RULE = Rule(CODE, check)
