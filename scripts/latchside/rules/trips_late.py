"""No profile lists a kind of opening at which its own trip always comes past the limit."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.figures.for_device.mounted import most
from latchside.figures.for_device.trips import limit_names
from latchside.figures.for_device.worked import Missing, Ratings
from latchside.figures.rounding import say
from latchside.findings import Finding
from latchside.library import Library
from latchside.messages import messages
from latchside.rules.rule import Rule

message = messages(__name__)
CODE = "trips-late"
TABLE, TRAVEL = "trip-limits", "break-travel"


def check(library: Library) -> Iterator[Finding]:
    """The travel to the trip, at its most, is within some region's limit for each kind, at the leading edge itself."""
    table = library.find("table", TABLE)
    if table is None:
        return
    limits = Ratings(table.get("values", {}))
    for device in library.of("device"):
        try:
            travel = most(Ratings(device["values"]), TRAVEL)
        except Missing:  # not stated; or stated in no unit of length, which the schema reports
            continue
        for index, kind in enumerate(device["openings"]):
            known = [limits.most(name, "mm") for name in limit_names(kind, table["values"])]
            if known and travel > max(known):
                late = message.finding(
                    "late", kind=kind, travel=say(travel, "mm"), limit=say(max(known), "mm"), file=table.raw.file
                )
                yield device.finding(CODE, ("openings", index), *late)


RULE = Rule(CODE, check)
