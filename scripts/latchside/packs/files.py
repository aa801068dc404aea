"""Which files a pack holds, and under which names."""

from __future__ import annotations

from latchside.messages import Message, messages
from latchside.packs.calendar import service_ics
from latchside.packs.data import plan_json
from latchside.packs.tables import parts_csv, zones_csv
from latchside.packs.visit import visit_json
from latchside.planning.plan import Plan

message = messages(__name__)
_ABOUT = {
    "zones.csv": "zones-csv",
    "parts.csv": "parts-csv",
    "service.ics": "service-ics",
    "visit.json": "visit-json",
    "plan.json": "plan-json",
}
"""The message that says what each file beside the document is."""


def about(name: str) -> Message:
    """What a file beside the document is."""
    return message(_ABOUT[name])


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
