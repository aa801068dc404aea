"""What the guided run of a fault needs to know, as data in its page: the problem that the plan is made for."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from markupsafe import Markup

from latchside.library import Library, Record
from latchside.order import Problem, from_fault
from latchside.order.problem import guesses
from latchside.version import library_version


def problem_data(problem: Problem) -> dict[str, Any]:
    """A problem as plain values, as `content/assets/js/fault/plan.js` reads it."""
    return {
        "causes": [
            {"id": one.id, "weight": one.weight, "minutes": one.minutes, "who": one.who, "after": one.after,
             "here": one.here}
            for one in problem.causes
        ],
        "set_ups": [{"id": one.id, "minutes": one.minutes, "touches": one.touches} for one in problem.set_ups],
        "checks": [
            {
                "id": check.id, "minutes": check.minutes, "needs": check.needs, "touches": check.touches,
                "restore": check.restore,
                "results": [
                    {"id": one.id, "leaves": one.leaves, "chance": [_short(share) for share in one.chance],
                     "go": one.go, "escalate": one.escalate}
                    for one in check.results
                ],
            }
            for check in problem.checks
        ],
    }  # fmt: skip


def _reads(check: Mapping[str, Any]) -> dict[str, str]:
    """Which results of a check are a reading inside what is expected, and which one outside."""
    return {result["id"]: result["reads"] for result in check["results"] if "reads" in result}


def _place(one: dict[str, Any], among: list[dict[str, Any]]) -> int:
    if one not in among:
        among.append(one)
    return among.index(one)


def _short(share: float) -> float:
    return int(share) if share in (0, 1) else share


def run_data(library: Library, fault: Record) -> Markup:
    """The block of data of a fault's page: the problem for any device, and those of devices where it differs.

    `own` says which of `problems` is that of a device; devices that differ in the same way share one.
    """
    known = guesses(library.schemas)
    devices = library.referring("fault", fault.id, "device")
    whole = problem_data(from_fault(fault.data, known))
    problems: list[dict[str, Any]] = []
    own: dict[str, int] = {}
    for device in devices:
        problem = problem_data(from_fault(fault.data, known, device.id))
        if problem != whole:
            own[device.id] = _place(problem, problems)
    words = library.schemas.words
    data = {
        "fault": fault.id, "name": fault.name, "version": fault["version"], "library": library_version(),
        "needs": words("need"), "who": words("who"), "to": fault["escalate"]["to"],
        "devices": {device.id: device.name for device in library.of("device")},
        "listed": [device.id for device in devices],
        "faults": {result["go"]: other.name for check in fault["checks"] for result in check["results"]
                   if (other := library.find("fault", result.get("go", "")))},
        "reads": {check["id"]: reads for check in fault["checks"] if (reads := _reads(check))},
        "any": whole, "own": own, "problems": problems,
    }  # fmt: skip
    text = json.dumps(data, ensure_ascii=False, separators=(",", ":"), default=dict)
    return Markup(text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029"))
