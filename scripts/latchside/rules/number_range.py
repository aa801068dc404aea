"""Numbers make sense: the right sort of unit, and limits the right way round."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding
from latchside.library import Library
from latchside.library.walk import mappings_with
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "number-range"


def check(library: Library) -> Iterator[Finding]:
    """min is not above max, and a device value has a unit that fits its name."""
    dimension_of = library.schemas.dimensions("unit")
    expected = library.schemas.dimensions("value-name")
    for record in library:
        for path, entry in mappings_with(frozenset({"unit", "status"}), record.data):
            if entry.get("min", entry.get("max", 0)) > entry.get("max", entry.get("min", 0)):
                problem = message.finding("limits-crossed", least=str(entry["min"]), most=str(entry["max"]))
                yield record.finding(CODE, path, *problem)
        for name, entry in record.get("values", {}).items() if record.kind.id == "device" else ():
            if dimension_of.get(entry["unit"]) != expected[name]:
                fitting = sorted(unit for unit, dimension in dimension_of.items() if dimension == expected[name])
                problem = message.finding(
                    "wrong-unit", unit=entry["unit"], value=name, dimension=expected[name], fitting=", ".join(fitting)
                )
                yield record.finding(CODE, ("values", name, "unit"), *problem)


RULE = Rule(CODE, check)
