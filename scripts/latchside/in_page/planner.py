"""What a page asks of the planner. Runs in the page's own Python, on the records that came with the site.

Text goes in and comes out, because nothing else crosses between the two languages without a copy of its own. The
records and schemas stand beside this package, where `parts` put them.
"""

from __future__ import annotations

import json
from datetime import date
from functools import cache, lru_cache
from typing import Any

from latchside.figures.catalogue import figures_of
from latchside.library.model import Library
from latchside.library.snapshot import library_from
from latchside.packs.data import plan_json
from latchside.packs.words import amount
from latchside.planning.glance import glance
from latchside.planning.make import make_plan
from latchside.planning.own_rules import read_own, with_own
from latchside.planning.plan import Plan
from latchside.root import ROOT, schema_folder
from latchside.schemas import load_schemas
from latchside.surveys.build import build
from latchside.surveys.survey import Survey

RECORDS = "records.json"


@cache
def library() -> Library:
    """The records of the site."""
    return library_from((ROOT / RECORDS).read_text("utf-8"), load_schemas(schema_folder(ROOT)))


@lru_cache(maxsize=1)
def _with(own: str) -> Library:
    """The records with the firm's own figures, from the text of a file of house rules; empty: it has none."""
    found, findings = read_own(own, "house-rules.json", library()) if own else ({}, ())
    if findings:
        raise ValueError("; ".join(f"{one.found}: {one.action}" for one in findings))
    return with_own(library(), found)


def planned(survey: str, today: str, own: str = "") -> str:
    """How a survey stands, as JSON: `glance` of its plan, with what goes on the van, and `unread`, what could not be
    read of it.

    `survey` is JSON that fits the schema of surveys; the page has checked that. It is planned for the day of the
    survey, or for `today` where it names none, by house rules of which `own` has the firm's own figures.
    """
    read, misread = build(json.loads(survey))
    unread = [{"path": list(one.path), "found": one.found, "action": one.action} for one in misread]
    shown = _shown(_plan(read, today, own), _with(own)) if read.openings else None
    return json.dumps({"glance": shown, "unread": unread}, ensure_ascii=False)


def _shown(plan: Plan, library: Library) -> dict[str, Any]:
    items = [{"name": one.name, "amount": amount(one.quantity + one.spare, one.unit)} for one in plan.items]
    return {**glance(plan, library), "items": items}


def pack_files(survey: str, today: str, own: str = "", site: str = "") -> dict[str, bytes]:
    """The files that `latchside plan SURVEY --out DIR --address SITE` writes: content by name.

    `survey` is the text of the file that the page saves. What makes documents is imported when it is first asked for.
    """
    from latchside.in_page.pack import files

    return files(survey, today, _with(own), site)


def visit_file(survey: str, today: str, own: str = "") -> str:
    """The visit file of that pack: a visit of the job with what is planned at each opening."""
    from latchside.in_page.reading import plan_of
    from latchside.packs.visit import visit_json

    return visit_json(plan_of(survey, today, _with(own)))


def plan_file(survey: str, today: str, own: str = "") -> str:
    """The plan as the file that `latchside plan --json` prints."""
    read, _ = build(json.loads(survey))
    return plan_json(_plan(read, today, own))


def _plan(read: Survey, today: str, own: str) -> Plan:
    records = _with(own)
    return make_plan(read, records, figures_of(records), read.surveyed or date.fromisoformat(today))
