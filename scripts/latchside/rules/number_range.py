"""Numbers make sense: the right sort of unit, and limits the right way round."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.walk import mappings_with
from latchside.rules.rule import Rule

CODE = "number-range"


def check(library: Library) -> Iterator[Finding]:
    """min is not above max, and a device value has a unit that fits its name."""
    dimension_of = library.schemas.dimensions("unit")
    wanted = library.schemas.dimensions("value-name")
    for record in library:
        for path, entry in mappings_with(frozenset({"unit", "status"}), record.data):
            if entry.get("min", entry.get("max", 0)) > entry.get("max", entry.get("min", 0)):
                yield record.finding(
                    CODE,
                    path,
                    f"min {entry['min']} above max {entry['max']}",
                    "min at most max",
                    "Swap or correct them.",
                )
        for name, entry in record.get("values", {}).items() if record.kind.id == "device" else ():
            if dimension_of.get(entry["unit"]) != wanted[name]:
                fitting = sorted(unit for unit, dimension in dimension_of.items() if dimension == wanted[name])
                yield record.finding(
                    CODE, ("values", name, "unit"), f"{entry['unit']} for {name}",
                    f"a unit of {wanted[name]}: {', '.join(fitting)}", "Correct the unit.",
                )  # fmt: skip


RULE = Rule(CODE, check)
