"""Which files a pack holds, and under which names."""

from __future__ import annotations

from latchside.packs.calendar import service_ics
from latchside.packs.data import plan_json
from latchside.packs.tables import parts_csv, zones_csv
from latchside.packs.visit import visit_json
from latchside.planning.plan import Plan

FILES = {
    "zones.csv": "Zone schedule, for a spreadsheet",
    "parts.csv": "What goes on the van, for a spreadsheet",
    "service.ics": "Service dates, for a calendar",
    "visit.json": "The visit with its openings, to bring in on the phone",
    "plan.json": "The whole plan as data",
}
"""The files beside the document, each with what it is."""


def pack_files(plan: Plan) -> dict[str, str]:
    """The files beside the document, text by name; one that would hold nothing is left out."""
    made = {
        "zones.csv": zones_csv(plan),
        "parts.csv": parts_csv(plan),
        "service.ics": service_ics(plan),
        "visit.json": visit_json(plan),
        "plan.json": plan_json(plan),
    }
    return {name: text for name, text in made.items() if text}
