"""What a page asks of the planner. Runs in the page's own Python, on the records that came with the site.

Text goes in and comes out, because nothing else crosses between the two languages without a copy of its own. The
records and schemas stand beside this package, where `parts` put them.
"""

from __future__ import annotations

import json
from datetime import date
from functools import cache

from latchside.figures.catalogue import figures_of
from latchside.library.model import Library
from latchside.library.snapshot import library_from
from latchside.packs.data import plan_json
from latchside.planning.glance import glance
from latchside.planning.make import make_plan
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


def planned(survey: str, today: str) -> str:
    """How a survey stands, as JSON: `glance` of its plan, and `unread`, what of it could not be read.

    `survey` is JSON that fits the schema of surveys; the page has checked that. It is planned for the day of the
    survey, or for `today` where it names none.
    """
    read, misread = build(json.loads(survey))
    unread = [{"path": list(one.path), "found": one.found, "action": one.action} for one in misread]
    shown = glance(_plan(read, today), library()) if read.openings else None
    return json.dumps({"glance": shown, "unread": unread}, ensure_ascii=False)


def plan_file(survey: str, today: str) -> str:
    """The plan as the file that `latchside plan --json` prints."""
    read, _ = build(json.loads(survey))
    return plan_json(_plan(read, today))


def _plan(read: Survey, today: str) -> Plan:
    return make_plan(read, library(), figures_of(library()), read.surveyed or date.fromisoformat(today))
