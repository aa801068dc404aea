"""No profile lists a kind of opening at which its own trip always comes past the limit."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.figures.for_device.mounted import most
from latchside.figures.for_device.trips import limit_names
from latchside.figures.for_device.worked import Missing, Ratings
from latchside.findings import Finding
from latchside.library import Library
from latchside.rules.rule import Rule

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
                yield device.finding(
                    CODE, ("openings", index),
                    f"{kind}, whose edge has opened {travel:.4g} mm before the contact trips, past {max(known):.4g} mm",
                    f"a kind whose limit in {table.raw.file} the travel keeps",
                    f"Take {kind} out of openings, or state the travel that the label promises.",
                )  # fmt: skip


RULE = Rule(CODE, "No class of device is listed for a kind of opening at which it always trips past the limit.", check)
