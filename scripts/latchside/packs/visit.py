"""A visit file ready for the phone: the visit, its openings and what is planned at each of them.

Two contacts at an opening are two entries: each is read and proved by itself.
"""

from __future__ import annotations

import json
import re
from hashlib import sha256
from typing import Any

from latchside.figures.units import readable, symbol
from latchside.messages import messages
from latchside.packs.calendar import service_ics
from latchside.packs.ids import id_of
from latchside.planning.plan import Expected, OpeningPlan, Plan
from latchside.planning.zones import contact_names
from latchside.visits.state import canonical

message = messages(__name__)
_UNSEEN = re.compile("[\x00-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ufeff\ud800-\udfff]")
_UNSEEN_IN_LINES = re.compile("[\x00-\x09\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ufeff\ud800-\udfff]")
_MOST_VALUES = 40
_MOST_CALENDAR = 400_000
_LARGEST = 1e12
_SLUG = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")


def visit_json(plan: Plan) -> str:
    """The file. The same plan is the same visit; a plan with any other content is another one."""
    contacts = [(one, part, name) for one in plan.openings for part, name in enumerate(contact_names(one))]
    zones = _positions(plan)
    openings = [{**_opening(one, name), "job": _place(one, part, zones)} for one, part, name in contacts]
    job = {"id": plan.survey.id, **_calendar(plan)}
    site = _line(plan.survey.name, 120, plan.survey.id)
    about = {"kind": "visit", "site": site, "date": plan.on.isoformat(), "job": job}
    content = sha256(canonical([about, openings, plan.library]).encode("utf-8")).hexdigest()
    visit = id_of("visit", plan.survey.id, content)
    moment = f"{plan.on.isoformat()}T00:00:00.000+00:00"
    frame = {"visit": visit, "at": moment, "by": "", "library": _line(plan.library, 40, "unknown")}
    entries = [{**about, "id": id_of(visit, "visit"), "n": 1, **frame, "who": "", "after": []}]
    for number, (one, (planned, part, _)) in enumerate(zip(openings, contacts, strict=True), 2):
        which = (planned.opening.id, *([str(part + 1)] if part else ()))
        ids = {"id": id_of(visit, "entry", *which), "opening": id_of(visit, "opening", *which)}
        entries.append({"kind": "opening", **ids, "n": number, **frame, **one, "removed": False, "after": []})
    data = {
        "format": "latchside-visit", "version": 1, "saved": moment, "library": frame["library"], "visit": visit,
        "entries": entries,
    }  # fmt: skip
    return json.dumps(data, ensure_ascii=False, indent=1) + "\n"


def _calendar(plan: Plan) -> dict[str, str]:
    """What falls due after the job; left out where nothing does, and where no phone should carry as much."""
    text = _UNSEEN_IN_LINES.sub("", service_ics(plan))
    return {"calendar": text} if text and len(text) <= _MOST_CALENDAR else {}


def _positions(plan: Plan) -> dict[str, list[str]]:
    """The positions that an opening takes, each once, by its id."""
    found: dict[str, list[str]] = {}
    for zone in plan.zones:
        held = found.setdefault(zone.opening, [])
        if zone.position not in held:
            held.append(zone.position)
    return found


def _place(one: OpeningPlan, part: int, zones: dict[str, list[str]]) -> dict[str, str]:
    """Where a contact stands in the plan. Contacts that share a loop have one position."""
    held = zones.get(one.opening.id, [])
    return {"opening": one.opening.id, **({"zone": held[min(part, len(held) - 1)]} if held else {})}


def _opening(one: OpeningPlan, name: str) -> dict[str, Any]:
    made: dict[str, Any] = {"name": _line(name, 80, one.opening.id), "device": one.choice.device}
    planned: dict[str, Any] = {}
    for value in one.expected:
        if _SLUG.fullmatch(value.measure) and (limits := _limits(value)) and len(planned) < _MOST_VALUES:
            shown, unit = readable(tuple(limits.values()), value.unit)
            words, sign = _line(value.shown, 200, message("as-planned")), _line(symbol(unit), 12, "")
            ranges = [dict(zip(limits, shown, strict=True))]
            planned.setdefault(value.measure, {"words": words, "unit": sign, "ranges": ranges})
    return {**made, "expected": planned} if planned else made


def _limits(value: Expected) -> dict[str, float]:
    limits = {"low": value.low, "high": value.high}
    return {name: limit for name, limit in limits.items() if limit is not None and abs(limit) <= _LARGEST}


def _line(text: str, longest: int, instead: str) -> str:
    """One line that fits; `instead` where nothing of it can be seen."""
    line = " ".join(_UNSEEN.sub(" ", text).split())
    return line if len(line) <= longest and line else f"{line[: longest - 1]}…" if line else instead
