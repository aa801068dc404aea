"""What could not be read of a survey, as problems of its plan: nothing that is left out of a pack goes unsaid."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from latchside.findings import Finding
from latchside.messages import messages
from latchside.planning.plan import Plan, Problem
from latchside.surveys.codes import CODES

message = messages(__name__)


def with_unread(plan: Plan, findings: Iterable[Finding]) -> Plan:
    """The plan of a survey with the findings made as it was read."""
    unread = (_problem(one) for one in findings if one.level == "error" or one.code in CODES)
    return replace(plan, problems=(*unread, *plan.problems))


def _problem(one: Finding) -> Problem:
    line = str(one.place.line)
    if one.code in CODES:
        return Problem("site", one.code, message("code", line=line, found=one.found), one.action)
    return Problem(
        "site", "not-read", message("not-read.found", line=line, found=one.found), message("not-read.action")
    )
